/** The site among the reader's apps. What a browser needs for that: Web Application Manifest (W3C), and its safe zone for maskable icons, a circle of two fifths of the side round the centre. */
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { APP_ICONS, appIcon, appManifest } from '../../../src/build/pictures/app-icons.ts';

test.each(APP_ICONS)('$name has the size that its name says, and no see-through part', async (icon) => {
  const { width, height, format } = await sharp(await appIcon(icon)).metadata();
  expect([format, width, height]).toEqual(['png', icon.side, icon.side]);
  expect((await sharp(await appIcon(icon)).stats()).isOpaque).toBe(true);
});

test('no shape that a phone cuts takes anything off the sign', async () => {
  const icon = APP_ICONS.find(({ isMaskable }) => isMaskable);
  if (!icon) throw new Error('no icon is maskable');
  const { data, info } = await sharp(await appIcon(icon)).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const ground = [...data.subarray(0, 3)];
  let drawn = 0;
  let farthest = 0;
  for (let y = 0; y < info.height; y += 1) {
    for (let x = 0; x < info.width; x += 1) {
      const at = (y * info.width + x) * info.channels;
      if (ground.every((value, i) => value === data[at + i])) continue;
      drawn += 1;
      farthest = Math.max(farthest, Math.hypot(x + 0.5 - icon.side / 2, y + 0.5 - icon.side / 2));
    }
  }
  expect(drawn).toBeGreaterThan(1000);
  expect(farthest).toBeLessThan(0.4 * icon.side);
});

test('the manifest has what browsers ask for, in the folder of the site', () => {
  const manifest = appManifest() as { name: string; start_url: string; scope: string; display: string; icons: { sizes: string; purpose: string; src: string }[] };
  expect(manifest.start_url.startsWith(manifest.scope)).toBe(true);
  expect(['fullscreen', 'standalone', 'minimal-ui']).toContain(manifest.display);
  expect(manifest.icons.filter(({ purpose }) => purpose === 'any').map(({ sizes }) => sizes)).toEqual(['192x192', '512x512']);
  expect(manifest.icons.filter(({ purpose }) => purpose === 'maskable')).toHaveLength(1);
});
