/**
 * Many lives of a saved copy, drawn at random: builds come and come back, the host breaks off or is renewed while it sends, the device
 * is full. Whatever happens, a set with its note is one build, whole. The caches and the host are simulated; the content is made up.
 */
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { afterEach, expect, test, vi } from 'vitest';
import { FillError, fillSet } from '../../../src/offline/fill.ts';
import { cacheNames, COMPLETE, type KeptSet, staleCaches } from '../../../src/offline/kept-set.ts';
import type { Told } from '../../../src/offline/told.ts';

const ROOT = 'https://site.example/club/';
const BASE = '/club/';
const PATHS = ['/', '/compare/', '/compare/evidence.json', '/caution/', '/a.js'] as const;

/** A build: the content of each path. Few contents, so that files stay, move and come back. */
type Contents = Readonly<Record<string, string>>;
const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 12);
const setOf = (contents: Contents): KeptSet => {
  const files = Object.fromEntries(Object.entries(contents).map(([path, text]) => [path, hashOf(text)]));
  return { build: hashOf(JSON.stringify(files)), evidence: '2026-11-25.4', slings: [], files };
};

/** Caches of a browser, with room for so many more entries. */
class Device {
  readonly caches = new Map<string, Map<string, Response>>();
  room = Number.POSITIVE_INFINITY;
  open = async (name: string) => {
    const held = this.caches.get(name) ?? new Map<string, Response>();
    this.caches.set(name, held);
    return {
      put: async (address: string, response: Response) => {
        if (this.room <= 0) throw new DOMException('no room', 'QuotaExceededError');
        this.room -= 1;
        held.set(address, response);
      },
      match: async (asked: string | { url: string }) => held.get(typeof asked === 'string' ? asked : asked.url)?.clone(),
      keys: async () => [...held.keys()].map((url) => ({ url })),
    };
  };
  keys = async () => [...this.caches.keys()];
  delete = async (name: string) => this.caches.delete(name);
}

/** What one try met with. */
interface Try { contents: Contents; breaksAfter: number | null; room: number | null; renewedTo: Contents | null; isTakenOver: boolean }

const contents = fc.record(Object.fromEntries(PATHS.map((path) => [path, fc.constantFrom('a', 'b', 'c')])) as Record<string, fc.Arbitrary<string>>);
const tries = fc.array(fc.record({
  contents, breaksAfter: fc.option(fc.integer({ min: 0, max: 5 })), room: fc.option(fc.integer({ min: 0, max: 7 })), renewedTo: fc.option(contents), isTakenOver: fc.boolean(),
}), { minLength: 1, maxLength: 6 });

afterEach(() => vi.unstubAllGlobals());

test('a set with its note is one build and whole, whatever broke off before; a full device keeps no half; nothing at hand is fetched', async () => {
  const seen = { kept: 0, full: 0, network: 0, changed: 0, refused: 0 };
  await fc.assert(fc.asyncProperty(tries, async (all: Try[]) => {
    const device = new Device();
    vi.stubGlobal('caches', device);
    (await device.open('of someone else')).put(`${ROOT}x`, new Response('theirs'));
    const builds = new Map<string, Contents>();
    for (const { contents: wanted, breaksAfter, room, renewedTo, isTakenOver } of all) {
      const set = setOf(wanted);
      const own = cacheNames(BASE, set.build).set;
      builds.set(own, wanted);
      device.room = room ?? Number.POSITIVE_INFINITY;
      const atHand = new Set([...device.caches].flatMap(([, held]) => [...held.values()].map((response) => response.headers.get('x-content-hash'))));
      let sent = 0;
      vi.stubGlobal('fetch', async (address: string) => {
        const path = `/${address.slice(ROOT.length)}`;
        expect(atHand.has(set.files[path] ?? ''), `${path} was at hand`).toBe(false);
        if (breaksAfter !== null && sent >= breaksAfter) throw new TypeError('network');
        sent += 1;
        // Half way through, the host may send the next build.
        const host = renewedTo !== null && sent > 2 ? renewedTo : wanted;
        return new Response(host[path] ?? null, { status: host[path] === undefined ? 404 : 200, headers: { date: 'Sun, 06 Nov 1994 08:49:37 GMT' } });
      });
      const told: Told[] = [];
      const fault = await fillSet(set, ROOT, (one) => { told.push(one); }).then(() => null, (error: unknown) => error);
      if (fault !== null && !(fault instanceof FillError)) throw fault;
      seen[fault?.why ?? 'kept'] += 1;
      expect(told.at(-1)?.is).toBe(fault ? 'failed' : 'kept');
      if (fault?.why === 'full') expect(device.caches.has(own)).toBe(false);
      if (!fault) expect(device.caches.get(own)?.has(`${ROOT}offline/complete`), COMPLETE).toBe(true);
      if (!fault && isTakenOver) {
        for (const name of staleCaches(await device.keys(), BASE, set.build)) await device.delete(name);
        expect(await device.keys()).toEqual(['of someone else', own]);
      }
      for (const [name, held] of device.caches) {
        const build = builds.get(name);
        for (const [path, text] of Object.entries(build ?? {})) {
          const file = held.get(ROOT + path.slice(1));
          // Every file that is there is of its build; with the note, every file is there.
          if (file) expect(await file.clone().text()).toBe(text);
          else expect(held.has(`${ROOT}offline/complete`), `${path} is missing from a set with its note`).toBe(false);
        }
      }
      expect(await device.caches.get('of someone else')?.get(`${ROOT}x`)?.clone().text()).toBe('theirs');
    }
  }), { numRuns: 1500 });
  // Each way to end was met, or the lives say nothing of it.
  expect(Object.entries(seen).filter(([why, times]) => why !== 'refused' && times < 100)).toEqual([]);
});
