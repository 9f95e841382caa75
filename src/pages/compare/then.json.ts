/** Which versions of the evidence there are, for links made with an older one. */
import type { APIRoute } from 'astro';
import { thenIndex } from '../../build/then.ts';

export const GET: APIRoute = () => new Response(JSON.stringify(thenIndex()), { headers: { 'content-type': 'application/json' } });
