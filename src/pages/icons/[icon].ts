/** The icons that a phone shows among its apps. */
import type { APIRoute, GetStaticPaths } from 'astro';
import { APP_ICONS, type AppIcon, appIcon } from '../../build/pictures/app-icons.ts';

export const getStaticPaths: GetStaticPaths = () => APP_ICONS.map((icon) => ({ params: { icon: icon.name }, props: { icon } }));

export const GET: APIRoute = async ({ props }) => new Response(new Uint8Array(await appIcon(props['icon'] as AppIcon)), { headers: { 'content-type': 'image/png' } });
