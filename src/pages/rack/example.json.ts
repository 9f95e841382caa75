/** The example rack, as a file of the register. Every device in it is invented, and it says so. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { APIRoute } from 'astro';

export const GET: APIRoute = () => new Response(readFileSync(join(process.cwd(), 'data/demo/rack.json')), { headers: { 'content-type': 'application/json' } });
