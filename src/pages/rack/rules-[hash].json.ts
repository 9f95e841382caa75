/** The rules of retirement for pages that read a rack: without their figures, which stand on the page of the verdict. */
import type { APIRoute, GetStaticPaths } from 'astro';
import { rulesFile } from '../../build/verdict-page.ts';

export const getStaticPaths: GetStaticPaths = () => [{ params: { hash: rulesFile().name.slice('rules-'.length, -'.json'.length) } }];

export const GET: APIRoute = () => new Response(rulesFile().text, { headers: { 'content-type': 'application/json' } });
