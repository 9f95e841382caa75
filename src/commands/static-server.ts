/** A small static file server for a built site: what any static host does, with the headers of ours. No network is needed. */
import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { extname, join, normalize, relative, sep } from 'node:path';
import { createGzip } from 'node:zlib';
import { headersOf, TYPES } from '../build/steps/hosting.ts';

/** A running server and where it is reached. */
export interface StaticSite {
  server: Server;
  port: number;
  /** Address of the home page, with the base path. */
  address: string;
  close(): Promise<void>;
}

export interface StaticOptions {
  /** Port to listen on; 0 takes any free one. */
  port: number;
  /** Path that the site lives under, `/` or `/name/`. */
  base?: string;
  /** When the port is taken, try the next ones up to this many. Default: 0, the error is thrown. */
  triesAfter?: number;
  /** Name or address to listen on. Default: `localhost`, so that only this machine reaches it. */
  host?: string;
}

/** `/`, or the path with one slash at either end. */
export function asBase(path: string): string {
  const inner = path.replace(/^\/+|\/+$/g, '');
  return inner === '' ? '/' : `/${inner}/`;
}

/**
 * Where a request leads: a file to send, a redirect, or nothing.
 *
 * A folder's page is its `index.html`; an address of a folder without its closing
 * slash is redirected, because relative links would break on it. The query is kept.
 */
async function resolve(directory: string, base: string, url: string): Promise<{ file: string } | { redirect: string } | null> {
  const [rawPath = '/', query] = url.split('?', 2);
  let path: string;
  try {
    path = decodeURIComponent(rawPath);
  } catch {
    return null;
  }
  const suffix = query === undefined ? '' : `?${query}`;
  if (base !== '/' && `${path}/` === base) return { redirect: base + suffix };
  if (!path.startsWith(base) || path.includes('\0')) return null;
  const target = normalize(join(directory, path.slice(base.length)));
  if (target !== directory && !target.startsWith(directory + sep)) return null;
  const found = await stat(target).catch(() => null);
  if (found?.isFile()) return path.endsWith('/') ? null : { file: target };
  if (!found?.isDirectory()) return null;
  const index = join(target, 'index.html');
  if (!(await stat(index).catch(() => null))?.isFile()) return null;
  return path.endsWith('/') ? { file: index } : { redirect: `${rawPath}/${suffix}` };
}

/** Whether a browser takes gzip, and whether that makes such a file smaller. */
const isPacked = (request: IncomingMessage, type: string): boolean => /charset|svg|manifest/.test(type) && /\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''));

function send(request: IncomingMessage, response: ServerResponse, root: string, file: string, withBody: boolean): void {
  const type = TYPES[extname(file).toLowerCase()] ?? 'application/octet-stream';
  const packed = isPacked(request, type);
  response.writeHead(200, {
    'content-type': type,
    ...(packed ? { 'content-encoding': 'gzip' } : {}),
    vary: 'Accept-Encoding',
    ...headersOf(`/${relative(root, file).replaceAll(sep, '/')}`),
  });
  if (!withBody) {
    response.end();
    return;
  }
  const stream = createReadStream(file);
  stream.on('error', () => response.destroy());
  (packed ? stream.pipe(createGzip()) : stream).pipe(response);
}

/** Serves the files of `directory` under `base` until it is closed. */
export async function serveDirectory(directory: string, options: StaticOptions): Promise<StaticSite> {
  const root = normalize(directory).replace(/[\\/]+$/, '');
  const base = asBase(options.base ?? '/');
  const server = createServer(async (request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { allow: 'GET, HEAD' }).end();
      return;
    }
    const withBody = request.method === 'GET';
    const target = await resolve(root, base, request.url ?? '/');
    if (target && 'redirect' in target) {
      response.writeHead(301, { location: target.redirect }).end();
    } else if (target) {
      send(request, response, root, target.file, withBody);
    } else {
      const missing = await readFile(join(root, '404.html')).catch(() => null);
      response.writeHead(404, { 'content-type': missing ? 'text/html; charset=utf-8' : 'text/plain; charset=utf-8', ...headersOf('/404.html') });
      response.end(withBody ? (missing ?? 'Not found\n') : undefined);
    }
  });
  const host = options.host ?? 'localhost';
  const port = await listen(server, options.port, host, options.triesAfter ?? 0);
  return {
    server,
    port,
    address: `http://localhost:${port}${base}`,
    close: () =>
      new Promise((done, fail) => {
        server.close((error) => (error ? fail(error) : done()));
        server.closeAllConnections();
      }),
  };
}

function listen(server: Server, port: number, host: string, triesAfter: number): Promise<number> {
  return new Promise((done, fail) => {
    const onError = (error: NodeJS.ErrnoException) => {
      server.off('listening', onListening);
      if (error.code !== 'EADDRINUSE' || triesAfter <= 0) fail(error);
      else listen(server, port + 1, host, triesAfter - 1).then(done, fail);
    };
    const onListening = () => {
      server.off('error', onError);
      const bound = server.address();
      done(bound && typeof bound === 'object' ? bound.port : port);
    };
    server.once('error', onError);
    server.once('listening', onListening);
    server.listen(port, host);
  });
}
