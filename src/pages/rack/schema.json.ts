/** The schema of a register's file, under an address that lasts. */
import type { APIRoute } from 'astro';
import { REGISTER_SCHEMA } from '../../rack/schema.ts';

export const GET: APIRoute = () => new Response(`${JSON.stringify(REGISTER_SCHEMA, null, 1)}\n`, { headers: { 'content-type': 'application/schema+json' } });
