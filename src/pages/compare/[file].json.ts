/** What the script of a comparison fetches, under names that change with the content: the evidence, and what older links are told. */
import type { APIRoute, GetStaticPaths } from 'astro';
import { comparatorFiles } from '../../build/comparator/files.ts';

export const getStaticPaths: GetStaticPaths = () => {
  const { evidence, older } = comparatorFiles();
  return [evidence, ...older].map(({ name, text }) => ({ params: { file: name.slice(0, -'.json'.length) }, props: { text } }));
};

export const GET: APIRoute = ({ props }) => new Response(props['text'], { headers: { 'content-type': 'application/json' } });
