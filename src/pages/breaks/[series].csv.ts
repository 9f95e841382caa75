/** The pulls of a series as a CSV file, as they stand in the repository. */
import type { APIRoute, GetStaticPaths } from 'astro';
import { allSeries } from '../../build/series/page.ts';

export const getStaticPaths: GetStaticPaths = () => [...allSeries()].map(([series, { csv }]) => ({ params: { series }, props: { csv } }));

export const GET: APIRoute = ({ props }) => new Response(props['csv'] as string, { headers: { 'Content-Type': 'text/csv; charset=utf-8' } });
