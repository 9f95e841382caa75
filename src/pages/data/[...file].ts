/** Every file of the folder `/data/`, under a path that lasts. */
import type { APIRoute, GetStaticPaths } from 'astro';
import { downloads } from '../../build/downloads/all-files.ts';

export const getStaticPaths: GetStaticPaths = () => [...downloads().files.keys()].map((file) => ({ params: { file } }));

export const GET: APIRoute = ({ params }) => {
  const file = downloads().files.get(params['file'] as string);
  if (!file) throw new RangeError(`file: the folder /data/ has none of this name (got ${params['file']})`);
  return new Response(file.bytes, { headers: { 'content-type': file.mediatype } });
};
