/** The picture beside a shared link of a prebuilt comparison. */
import type { APIRoute } from 'astro';
import { prebuiltRigs } from '../../../../../build/comparator/page.ts';
import { socialPicture } from '../../../../../build/pictures/social-picture.ts';
import { EYE_NAMES } from '../../../../../components/comparator/words.ts';
import type { Rig } from '../../../../../strength/types.ts';

export function getStaticPaths() {
  return prebuiltRigs().map((rig) => ({ params: { rating: String(rig.ratingKn), eye: rig.eye ?? undefined, sling: rig.sling ?? undefined }, props: { rig } }));
}

export const GET: APIRoute = async ({ props }) => {
  const rig = props['rig'] as Rig;
  return new Response(new Uint8Array(await socialPicture(rig, EYE_NAMES[rig.eye ?? 'bare-wire'])), { headers: { 'content-type': 'image/png' } });
};
