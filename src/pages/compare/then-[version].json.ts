/** One frozen version as a link that was made with it needs it: what was shown then, and what has changed since. */
import type { APIRoute, GetStaticPaths } from 'astro';
import { siteThen } from '../../build/then.ts';

export const getStaticPaths: GetStaticPaths = () => [...siteThen()].map(([version, told]) => ({ params: { version }, props: { told } }));

export const GET: APIRoute = ({ props }) => new Response(JSON.stringify(props['told']), { headers: { 'content-type': 'application/json' } });
