/** The rules of retirement for pages that read a rack: without their figures, which stand on the page of the verdict. */
import type { APIRoute } from 'astro';
import { verdictSetup } from '../../build/verdict-page.ts';

export const GET: APIRoute = () => {
  const { asOf, rules } = verdictSetup();
  return new Response(JSON.stringify({ asOf, rules }), { headers: { 'content-type': 'application/json' } });
};
