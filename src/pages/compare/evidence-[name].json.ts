/** The evidence that the comparator fetches, under a name that changes with its content. */
import type { APIRoute, GetStaticPaths } from 'astro';
import { evidenceFile } from '../../build/comparator-page.ts';

export const getStaticPaths: GetStaticPaths = () => [{ params: { name: evidenceFile().name } }];

export const GET: APIRoute = () => new Response(evidenceFile().text, { headers: { 'content-type': 'application/json' } });
