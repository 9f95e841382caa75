/** Serves `dist/` (or the folder that `BUILT_SITE` names) for the browser tests on any free port, and tells the tests where. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { asBase, serveDirectory } from '../../src/commands/static-server.ts';
import { ROOT } from './step.ts';

/** Environment variable with the address of the home page, closing slash included. */
export const SITE_VARIABLE = 'SITE_UNDER_TEST';

export default async function serveBuiltSite(): Promise<() => Promise<void>> {
  const dist = process.env['BUILT_SITE'] ?? join(ROOT, 'dist');
  if (!existsSync(join(dist, 'index.html'))) throw new Error(`${dist} holds no built site. Run \`npm run build\` first.`);
  const site = await serveDirectory(dist, { port: 0, base: asBase(process.env['BASE_PATH'] ?? '/') });
  process.env[SITE_VARIABLE] = site.address;
  return () => site.close();
}
