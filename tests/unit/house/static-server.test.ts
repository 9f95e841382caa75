/** The server of `npm start` does what any static host does: types, closing slashes, a page for what is missing, a base path. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { serveDirectory } from '../../../src/commands/static-server.ts';

const outside = mkdtempSync(join(tmpdir(), 'served-'));
const directory = join(outside, 'site');
mkdirSync(join(directory, 'methods'), { recursive: true });
writeFileSync(join(outside, 'private.txt'), 'private');
writeFileSync(join(directory, 'index.html'), 'home');
writeFileSync(join(directory, '404.html'), 'nothing here');
writeFileSync(join(directory, 'methods', 'index.html'), 'methods');
writeFileSync(join(directory, 'a.json'), '{}');
const root = await serveDirectory(directory, { port: 0 });
const based = await serveDirectory(directory, { port: 0, base: 'sling' });
afterAll(async () => {
  await Promise.all([root.close(), based.close()]);
  rmSync(outside, { recursive: true });
});

/** Sends the path as it is, dots and all: `fetch` would tidy it first. */
function get(port: number, path: string, method = 'GET'): Promise<{ status: number; type: string; location: string; body: string }> {
  return new Promise((done, fail) => {
    const sent = request({ host: 'localhost', port, path, method }, (answer) => {
      let body = '';
      answer.setEncoding('utf8').on('data', (piece) => (body += piece));
      answer.on('end', () => done({ status: answer.statusCode ?? 0, type: answer.headers['content-type'] ?? '', location: answer.headers.location ?? '', body }));
    });
    sent.on('error', fail).end();
  });
}

test.each([
  ['/', 200, 'text/html; charset=utf-8', 'home'],
  ['/methods/', 200, 'text/html; charset=utf-8', 'methods'],
  ['/methods/?v=1&rating=12', 200, 'text/html; charset=utf-8', 'methods'],
  ['/a.json', 200, 'application/json; charset=utf-8', '{}'],
  ['/gone/', 404, 'text/html; charset=utf-8', 'nothing here'],
  ['/a.json/', 404, 'text/html; charset=utf-8', 'nothing here'],
  ['/%', 404, 'text/html; charset=utf-8', 'nothing here'],
  ['/../private.txt', 404, 'text/html; charset=utf-8', 'nothing here'],
  ['/%2e%2e/private.txt', 404, 'text/html; charset=utf-8', 'nothing here'],
])('GET %s answers %i', async (path, status, type, body) => {
  expect(await get(root.port, path)).toMatchObject({ status, type, body });
});

test('text comes compressed to whom takes that, as long as it is text, and reads the same', async () => {
  const address = `http://localhost:${root.port}/methods/`;
  const packed = await fetch(address, { headers: { 'accept-encoding': 'gzip' } });
  expect([packed.headers.get('content-encoding'), packed.headers.get('vary'), await packed.text()]).toEqual(['gzip', 'Accept-Encoding', 'methods']);
  const plain = await fetch(address, { headers: { 'accept-encoding': 'identity' } });
  expect([plain.headers.get('content-encoding'), await plain.text()]).toEqual([null, 'methods']);
});

test('a folder without its closing slash is redirected and keeps its query', async () => {
  expect(await get(root.port, '/methods?v=1')).toMatchObject({ status: 301, location: '/methods/?v=1' });
});

test('under a base path only that path answers', async () => {
  expect(based.address).toBe(`http://localhost:${based.port}/sling/`);
  expect(await get(based.port, '/sling/methods/')).toMatchObject({ status: 200, body: 'methods' });
  expect(await get(based.port, '/sling')).toMatchObject({ status: 301, location: '/sling/' });
  expect(await get(based.port, '/methods/')).toMatchObject({ status: 404 });
});

test('HEAD sends no body and other methods are refused', async () => {
  expect(await get(root.port, '/', 'HEAD')).toMatchObject({ status: 200, body: '' });
  expect(await get(root.port, '/', 'POST')).toMatchObject({ status: 405 });
});

test('a taken port is passed over only when asked', async () => {
  const other = createServer();
  await new Promise<void>((done) => other.listen(0, 'localhost', () => done()));
  const taken = (other.address() as { port: number }).port;
  await expect(serveDirectory(directory, { port: taken })).rejects.toThrow('EADDRINUSE');
  const next = await serveDirectory(directory, { port: taken, triesAfter: 20 });
  expect(next.port).toBeGreaterThan(taken);
  await next.close();
  await new Promise((done) => other.close(done));
});
