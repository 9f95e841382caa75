/** What the columns of the table of pulls mean, for programs. */
import type { APIRoute } from 'astro';
import { templateSchema } from '../../../build/series/template.ts';

export const GET: APIRoute = () => new Response(`${JSON.stringify(templateSchema(), null, 2)}\n`, { headers: { 'content-type': 'application/json' } });
