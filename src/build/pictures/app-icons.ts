/** What a browser needs to put the site among the reader's apps: its manifest, and icons drawn from the site's own sign. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { PICTURE_COLOURS } from './social-picture.ts';
import { href, siteName } from '../site.ts';

/** An icon: its name below `/icons/`, its side in px, and whether a phone may cut it to its own shape. */
export interface AppIcon { name: string; side: number; isMaskable: boolean }

/** Sizes that browsers ask for (Web Application Manifest and its note on maskable icons). */
export const APP_ICONS: readonly AppIcon[] = [
  { name: 'sign-192.png', side: 192, isMaskable: false },
  { name: 'sign-512.png', side: 512, isMaskable: false },
  { name: 'sign-maskable-512.png', side: 512, isMaskable: true },
];

/** Share of the side that the sign takes: all of it inside the circle that no phone cuts, or near the edge where none cuts. */
const SHARE = { maskable: 0.74, plain: 0.96 };

/** An icon as PNG, on paper: phones put it on grounds of any colour. */
export async function appIcon({ side, isMaskable }: AppIcon): Promise<Buffer> {
  const sign = Math.round(side * (isMaskable ? SHARE.maskable : SHARE.plain));
  const svg = readFileSync(join(process.cwd(), 'public/favicon.svg'));
  const drawn = await sharp(svg, { density: (72 * sign) / 32 }).resize(sign, sign).png().toBuffer();
  return sharp({ create: { width: side, height: side, channels: 3, background: PICTURE_COLOURS.paper } }).composite([{ input: drawn, gravity: 'centre' }]).png({ compressionLevel: 9, palette: true }).toBuffer();
}

/** The manifest. With the browser's own way back, since pages lead to each other; and where a phone knows no such window, it opens the browser itself, in which the saved copy lies. */
export const appManifest = (): object => ({
  name: `${siteName}: a new sling for a sound device`,
  short_name: siteName,
  description: 'Who may replace the old sling on a camming device, and how strong each way of attaching a new one is.',
  id: href('/'), start_url: href('/'), scope: href('/'),
  display: 'minimal-ui',
  lang: 'en',
  background_color: PICTURE_COLOURS.paper,
  theme_color: PICTURE_COLOURS.paper,
  icons: APP_ICONS.map(({ name, side, isMaskable }) => ({ src: href(`/icons/${name}`), sizes: `${side}x${side}`, type: 'image/png', purpose: isMaskable ? 'maskable' : 'any' })),
});
