/**
 * The built site behind a real nginx, with the configuration that `npm run hosting` prints: headers, types, compression,
 * closing slashes, what is missing, a folder of its own, and a page that works. Where nginx is not installed this is left out.
 */
import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base, expect } from '@playwright/test';
import { headersOf } from '../../src/build/steps/hosting.ts';
import { filesUnder } from '../support/tree.ts';
import { ROOT } from '../support/step.ts';

const dist = process.env['BUILT_SITE'] ?? join(ROOT, 'dist');
const hasNginx = spawnSync('nginx', ['-v']).status === 0;

const freePort = (): Promise<number> => new Promise((done) => {
  const server = createServer().listen(0, '127.0.0.1', () => {
    const { port } = server.address() as AddressInfo;
    server.close(() => done(port));
  });
});

/** Starts nginx on the built site below a folder. */
async function startNginx(folder: string): Promise<{ address: string; stop: () => void }> {
  const home = mkdtempSync(join(tmpdir(), 'nginx-'));
  const port = await freePort();
  const site = execFileSync(process.execPath, ['src/commands/hosting.ts', 'nginx', '--directory', dist, '--port', String(port)], { cwd: ROOT, encoding: 'utf8', env: { ...process.env, BASE_PATH: folder } });
  writeFileSync(join(home, 'site.conf'), site);
  const places = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map((name) => `  ${name}_temp_path ${home}/${name};`).join('\n');
  // Its workers must be able to read wherever the project lies.
  writeFileSync(join(home, 'nginx.conf'), `daemon off;\n${process.getuid?.() === 0 ? 'user root;\n' : ''}pid ${home}/pid;\nerror_log ${home}/error.log;\nevents {}\nhttp {\n  access_log off;\n${places}\n  include ${home}/site.conf;\n}\n`);
  const run: ChildProcess = spawn('nginx', ['-p', home, '-c', join(home, 'nginx.conf')], { stdio: ['ignore', 'ignore', 'pipe'] });
  let said = '';
  run.stderr?.on('data', (piece) => { said += piece; });
  const address = `http://localhost:${port}${folder}`;
  for (let tries = 0; ; tries++) {
    if (await fetch(address).then(() => true, () => false)) break;
    if (tries > 100 || run.exitCode !== null) throw new Error(`nginx does not answer: ${said}`);
    await new Promise((done) => { setTimeout(done, 50); });
  }
  return { address, stop: () => { run.kill('SIGTERM'); rmSync(home, { recursive: true, force: true }); } };
}

const test = base.extend<object, { hosts: Record<'/' | '/slings/', string> }>({
  hosts: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads from the pattern which fixtures are wanted; here none.
    async ({}, use) => {
      const [root, folder] = [await startNginx('/'), await startNginx('/slings/')];
      await use({ '/': root.address, '/slings/': folder.address });
      root.stop();
      folder.stop();
    },
    { scope: 'worker' },
  ],
});
test.skip(!hasNginx, 'nginx is not installed');
test.skip(({ isMobile }) => isMobile === true, 'a host is the same for every screen');

for (const folder of ['/', '/slings/'] as const) {
  test(`under ${folder} each kind of file comes with its headers and its type`, async ({ hosts }) => {
    const evidence = filesUnder(join('dist', 'compare')).find((path) => /evidence-.*\.json$/.test(path)) ?? '';
    const script = filesUnder(join('dist', '_astro')).find((path) => path.endsWith('.js')) ?? '';
    for (const [asked, file, type] of [
      ['', 'index.html', 'text/html; charset=utf-8'],
      ['compare/?v=1&rating=9', 'compare/index.html', 'text/html; charset=utf-8'],
      ['embed/fall/', 'embed/fall/index.html', 'text/html; charset=utf-8'],
      [script.replace('dist/', ''), script.replace('dist/', ''), 'text/javascript; charset=utf-8'],
      [evidence.replace('dist/', ''), evidence.replace('dist/', ''), 'application/json; charset=utf-8'],
      ['data/figures.csv', 'data/figures.csv', 'text/csv; charset=utf-8'],
      ['cite/site.bib', 'cite/site.bib', 'application/x-bibtex; charset=utf-8'],
      ['changes/feed.xml', 'changes/feed.xml', 'application/xml; charset=utf-8'],
      ['favicon.svg', 'favicon.svg', 'image/svg+xml'],
    ] as const) {
      const answer = await fetch(hosts[folder] + asked, { headers: { 'accept-encoding': 'identity' } });
      expect(answer.status, asked).toBe(200);
      expect(Buffer.from(await answer.arrayBuffer()).equals(readFileSync(join(dist, file))), asked).toBe(true);
      expect(answer.headers.get('content-type'), asked).toBe(type);
      const wanted = headersOf(`/${file}`);
      for (const [name, value] of Object.entries(wanted)) expect(answer.headers.get(name), `${asked}: ${name}`).toBe(value);
      for (const name of ['Content-Security-Policy', 'Access-Control-Allow-Origin']) if (!(name in wanted)) expect(answer.headers.get(name), `${asked}: ${name}`).toBeNull();
      // What is unchanged is not sent again.
      const again = await fetch(hosts[folder] + asked, { headers: { 'if-none-match': answer.headers.get('etag') ?? 'none', 'accept-encoding': 'identity' } });
      expect(again.status, asked).toBe(304);
    }
  });

  test(`under ${folder} text comes compressed, a folder gets its slash with the query kept, and what is missing gets our page`, async ({ hosts }) => {
    const packed = await fetch(`${hosts[folder]}compare/`);
    expect([packed.headers.get('content-encoding'), packed.headers.get('vary')]).toEqual(['gzip', 'Accept-Encoding']);
    const bare = await fetch(`${hosts[folder]}compare?v=1&rating=9`, { redirect: 'manual' });
    expect([bare.status, bare.headers.get('location')]).toEqual([301, `${folder}compare/?v=1&rating=9`]);
    for (const asked of ['no/such/page/', 'data/../../etc/passwd', '%2e%2e/package.json', 'compare/12/']) {
      const missing = await fetch(hosts[folder] + asked);
      expect(missing.status, asked).toBe(404);
      expect(await missing.text(), asked).toBe(readFileSync(join(dist, '404.html'), 'utf8'));
      expect(missing.headers.get('content-security-policy')).toBe("frame-ancestors 'none'");
    }
    const wrong = await fetch(hosts[folder], { method: 'POST' });
    expect(wrong.status).toBe(405);
  });
}

test('outside its folder there is nothing of the site, and the folder without its slash leads in', async ({ hosts }) => {
  const origin = new URL(hosts['/slings/']).origin;
  expect((await fetch(`${origin}/compare/`)).status).toBe(404);
  const bare = await fetch(`${origin}/slings?x=1`, { redirect: 'manual' });
  expect([bare.status, bare.headers.get('location')]).toEqual([301, '/slings/?x=1']);
});

test('behind nginx the comparator answers a link, with a clean console', async ({ page, hosts }) => {
  const errors: string[] = [];
  page.on('console', (message) => { if (['error', 'warning'].includes(message.type())) errors.push(message.text()); });
  page.on('pageerror', (error) => errors.push(String(error)));
  await page.goto(`${hosts['/']}compare/9/bare-wire/hmpe-8/?v=1&bearing=4`);
  await expect(page.locator('.rig-line')).toContainText('9 kN');
  await expect(page.locator('.rig-line')).toContainText('4 mm');
  await expect(page.locator('html.reading, html.waiting')).toHaveCount(0);
  expect(errors).toEqual([]);
});
