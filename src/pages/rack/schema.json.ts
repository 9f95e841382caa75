/** The schema of a register's file, under an address that lasts. */
import type { APIRoute } from 'astro';
import { REGISTER_SCHEMA } from '../../rack/schema.ts';

/** What a reader of the schema is told, and the script does not need. */
const about = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'Rack register',
  description: 'Devices and their slings, kept by a reader. Edits are counted for each copy, so that two copies can be merged. What is not known is null, never absent.',
};

export const GET: APIRoute = () => new Response(`${JSON.stringify({ ...about, ...REGISTER_SCHEMA, title: about.title }, null, 1)}\n`, { headers: { 'content-type': 'application/schema+json' } });
