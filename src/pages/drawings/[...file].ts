/** The drawings as files: as SVG, which pages fetch when the reader comes to it, and as a picture for slides. */
import type { APIRoute } from 'astro';
import { siteDrawings } from '../../build/pictures/drawing-files.ts';
import { siteSlides, slidePng } from '../../build/pictures/slides.ts';

export function getStaticPaths() {
  return [...siteDrawings().keys(), ...siteSlides().keys()].map((path) => ({ params: { file: path.replace(/^drawings\//, '') }, props: { path } }));
}

export const GET: APIRoute<{ path: string }> = async ({ props: { path } }) => {
  const drawing = siteDrawings().get(path);
  if (drawing) return new Response(drawing.svg, { headers: { 'content-type': 'image/svg+xml' } });
  return new Response(new Uint8Array(await slidePng(path)), { headers: { 'content-type': 'image/png' } });
};
