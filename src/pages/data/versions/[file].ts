/** The archive of each frozen version, under a path that lasts. */
import type { APIRoute } from 'astro';
import { type FrozenArchive, frozenArchives, frozenName } from '../../../build/downloads/frozen-archive.ts';

export const getStaticPaths = () => frozenArchives().map((archive) => ({ params: { file: frozenName(archive.version) }, props: { archive } }));

export const GET: APIRoute<{ archive: FrozenArchive }> = ({ props }) => new Response(props.archive.bytes, { headers: { 'content-type': 'application/zip' } });
