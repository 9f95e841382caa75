/** The empty table of pulls. */
import type { APIRoute } from 'astro';
import { templateCsv } from '../../../build/series/template.ts';

export const GET: APIRoute = () => new Response(templateCsv(), { headers: { 'content-type': 'text/csv' } });
