/** The README of the course kit. The archive has the same file. */
import type { APIRoute } from 'astro';
import { kitReadme } from '../../../build/kit/readme.ts';

export const GET: APIRoute = () => new Response(kitReadme(), { headers: { 'content-type': 'text/plain; charset=utf-8' } });
