/** The manifest with which a browser puts the site among the reader's apps. */
import type { APIRoute } from 'astro';
import { appManifest } from '../build/pictures/app-icons.ts';

export const GET: APIRoute = () => new Response(JSON.stringify(appManifest()), { headers: { 'content-type': 'application/manifest+json' } });
