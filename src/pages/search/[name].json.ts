/** What search fetches: two files, each under a name that changes with its content. */
import type { APIRoute, GetStaticPaths } from 'astro';
import { searchFiles } from '../../build/search/files.ts';

export const getStaticPaths: GetStaticPaths = () => Object.values(searchFiles()).map(({ name, text }) => ({ params: { name }, props: { text } }));

export const GET: APIRoute = ({ props }) => new Response(props['text'], { headers: { 'content-type': 'application/json' } });
