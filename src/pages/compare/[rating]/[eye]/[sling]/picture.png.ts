/** The picture beside a shared link of a prebuilt comparison. */
import type { APIRoute } from 'astro';
import { prebuiltRigs } from '../../../../../build/comparator-page.ts';
import { socialPicture } from '../../../../../build/social-picture.ts';
import type { Rig } from '../../../../../strength/types.ts';

export function getStaticPaths() {
  return prebuiltRigs().map((rig) => ({ params: { rating: String(rig.ratingKn), eye: rig.eye ?? undefined, sling: rig.sling ?? undefined }, props: { rig } }));
}

export const GET: APIRoute = async ({ props }) => new Response(new Uint8Array(await socialPicture(props['rig'] as Rig)), { headers: { 'content-type': 'image/png' } });
