/** A host as it is out there: it gets new builds, breaks off, is slow, or is not there at all. For the tests of the saved copy. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asBase, serveDirectory, type StaticSite } from '../../src/commands/static-server.ts';
import { workerText, writeOffline } from '../../src/build/steps/offline-set.ts';
import { WORKER_FILE } from '../../src/offline/kept-set.ts';
import { ROOT } from './step.ts';

/** Which build is served: the one that was built; a renewed one; or the built one with the switch that ends all copies. */
export type Build = 'built' | 'renewed' | 'ended';

/** What a page or answer of the renewed build says, and no other does. */
export const RENEWED = 'renewed for a test';
/** Version of the evidence that the renewed build calls itself by. */
export const RENEWED_VERSION = '2027-01-02.1';

export interface RenewableSite {
  address: string;
  build: Build;
  /** Whether every connection is cut. */
  isDown: boolean;
  /** Wait before each answer, ms. */
  delayMs: number;
  /** Files sent until the host breaks off; null: it does not. */
  filesLeft: number | null;
  /** Paths that were asked for, since the list was last emptied. */
  asked: string[];
  close(): Promise<void>;
}

const dist = process.env['BUILT_SITE'] ?? join(ROOT, 'dist');
/** Rooms whose pages no test here opens. */
const LEFT_OUT = /^(?:embed|figures|data|cite|breaks|sources|changes)$/;

const edit = (folder: string, file: string, change: (text: string) => string): void => {
  const before = readFileSync(join(folder, file), 'utf8');
  const after = change(before);
  if (after === before) throw new Error(`${file}: the renewed build would not differ`);
  writeFileSync(join(folder, file), after);
};

/** Copies the built site, changes a page and the evidence as a new build would, and makes its worker anew. */
function renew(folder: string, base: string): void {
  for (const entry of readdirSync(dist)) if (!LEFT_OUT.test(entry)) cpSync(join(dist, entry), join(folder, entry), { recursive: true });
  const compare = join(folder, 'compare');
  const evidence = readdirSync(compare).find((name) => name.startsWith('evidence-')) ?? '';
  const stamp = evidence.slice('evidence-'.length);
  const renewedStamp = `${RENEWED_VERSION}.0123456789ab.json`;
  // The names of methods are what a reader sees of the evidence; no number is made up.
  edit(compare, evidence, (text) => text.replace(/"name":"Girth hitch"/, `"name":"Girth hitch, ${RENEWED}"`));
  for (const kind of ['evidence', 'then']) renameSync(join(compare, `${kind}-${stamp}`), join(compare, `${kind}-${renewedStamp}`));
  edit(compare, 'index.html', (text) => text.replaceAll(evidence, `evidence-${renewedStamp}`).replaceAll('Girth hitch', `Girth hitch, ${RENEWED}`));
  edit(folder, 'caution/index.html', (text) => text.replace('</h1>', `, ${RENEWED}</h1>`));
  writeOffline(folder, base, readFileSync(join(folder, WORKER_FILE), 'utf8'));
}

/** Starts the host. Two builds are made in a folder of their own, which goes with it. */
export async function startRenewableSite(base = asBase(process.env['BASE_PATH'] ?? '/')): Promise<RenewableSite> {
  const folder = mkdtempSync(join(tmpdir(), 'renewed-'));
  renew(folder, base);
  const sites: Record<'built' | 'renewed', StaticSite> = { built: await serveDirectory(dist, { port: 0, base }), renewed: await serveDirectory(folder, { port: 0, base }) };
  const ended = workerText(null, readFileSync(join(dist, WORKER_FILE), 'utf8'));
  const site: RenewableSite = {
    address: '', build: 'built', isDown: false, delayMs: 0, filesLeft: null, asked: [],
    close: async () => {
      await Promise.all([...Object.values(sites).map((one) => one.close()), new Promise((done) => { front.close(done); front.closeAllConnections(); })]);
      rmSync(folder, { recursive: true });
    },
  };
  const front = createServer((request, response) => {
    const path = request.url ?? '/';
    site.asked.push(path);
    const isWorker = path.endsWith(WORKER_FILE);
    if (site.isDown || (site.filesLeft !== null && !isWorker && site.filesLeft-- <= 0)) {
      request.socket.destroy();
      return;
    }
    setTimeout(() => {
      if (site.build === 'ended' && isWorker) response.writeHead(200, { 'content-type': 'text/javascript', 'cache-control': 'no-cache' }).end(ended);
      else sites[site.build === 'renewed' ? 'renewed' : 'built'].server.emit('request', request, response);
    }, site.delayMs);
  });
  await new Promise<void>((done) => { front.listen(0, 'localhost', done); });
  const bound = front.address();
  site.address = `http://localhost:${typeof bound === 'object' ? bound?.port : bound}${base}`;
  return site;
}
