/** The drawings as files: pages fetch each when the reader comes to it. */
import type { APIRoute } from 'astro';
import { siteDrawings } from '../../build/drawing-files.ts';

export function getStaticPaths() {
  return [...siteDrawings().values()].map(({ path, svg }) => ({ params: { file: path.replace(/^drawings\//, '') }, props: { svg } }));
}

export const GET: APIRoute<{ svg: string }> = ({ props }) => new Response(props.svg, { headers: { 'content-type': 'image/svg+xml' } });
