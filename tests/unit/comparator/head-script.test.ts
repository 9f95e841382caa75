/**
 * The head script decides, before anything is shown, whether the built results belong to the address. What it must
 * do follows from one rule: never another rig's numbers as its own. Addresses and paths are written by hand.
 */
import { createHash } from 'node:crypto';
import { runInNewContext } from 'node:vm';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { headScript } from '../../../src/build/comparator/head-script.ts';
import { parseLink } from '../../../src/links/parse-link.ts';
import { EXAMPLE_RIG } from '../../../src/links/rig-keys.ts';
import { rigWords, serialiseLink } from '../../../src/links/serialise-link.ts';

const example = Object.fromEntries(rigWords(EXAMPLE_RIG));
const page = {
  base: '/site/', patience: 8000, rig: example, example,
  prebuilt: { rating: ['9', '10', '12'], eye: ['bare-wire', 'sleeved-wire'], sling: ['hmpe-8', 'hmpe-10'] },
};

/** Runs the script for an address in a page that has only what the script touches. */
function open(search: string) {
  const classes = new Set<string>();
  const places: Record<string, { textContent: string; href?: string; setAttribute: (name: string, value: string) => void }> = {};
  for (const id of ['reading-rig', 'unread-page']) places[id] = { textContent: '', setAttribute(name, value) { if (name === 'href') this.href = value; } };
  const heard: Record<string, ((event: unknown) => void)[]> = {};
  const listen = (name: string, what: (event: unknown) => void) => { heard[name] = [...(heard[name] ?? []), what]; };
  const timers = new Map<number, { what: () => void; after: number }>();
  class HTMLScriptElement {}
  runInNewContext(headScript(page).text, {
    URLSearchParams, location: { search }, HTMLScriptElement, addEventListener: listen,
    document: { documentElement: { classList: { add: (name: string) => classes.add(name), contains: (name: string) => classes.has(name) } }, getElementById: (id: string) => places[id] ?? null, addEventListener: listen },
    setTimeout: (what: () => void, after: number) => { timers.set(timers.size + 1, { what, after }); return timers.size; },
    clearTimeout: (id: number) => timers.delete(id),
  });
  const tell = (name: string, event: unknown = {}) => { for (const what of heard[name] ?? []) what(event); };
  return { classes, places, tell, timers, scriptFails: () => tell('error', { target: new HTMLScriptElement() }) };
}

describe('the head script', () => {
  it('has the hash of exactly its text', () => {
    const { text, hash } = headScript(page);
    expect(hash).toBe(`sha256-${createHash('sha256').update(text).digest('base64')}`);
    expect(text).not.toContain('</');
  });

  it('leaves the page as built where the address names the built rig, in full, in part or not at all', () => {
    for (const search of ['', '?v=1', '?rating=12', '?eye=sleeved-wire&rating=12&d=2026-01-01.1', '?from=chat']) expect([...open(search).classes]).toEqual([]);
  });

  it('hides the built results for any other rig, also one that is not understood or said twice', () => {
    for (const search of ['?rating=10', '?rating=900', '?eye=wire', '?length=', '?rating=12&rating=10', '?rating=%E0%A4', '?oldage=3', '?bearing=3.8']) {
      expect([...open(search).classes]).toEqual(['reading']);
    }
  });

  it('hides them for every address that the comparator would read as another rig', () => {
    const keys = fc.constantFrom('rating', 'eye', 'bearing', 'sling', 'length', 'used', 'demand', 'oldsling', 'oldage', ' rating', 'r%61ting', 'Rating', 'v', 'x', '%zz');
    const values = fc.oneof(fc.constantFrom('12', '12,0', '+12+', '10', '900', '', 'unknown', 'unmeasured', 'rating', 'bare-wire', 'sleeved-wire', 'hmpe-8', 'hmpe-10', 'new', 'used', '60', '%E0', '%00'), fc.string({ unit: 'binary', maxLength: 4 }));
    const queries = fc.array(fc.tuple(keys, values).map(([key, value]) => `${key}=${value}`), { maxLength: 4 }).map((pieces) => `?${pieces.join('&')}`);
    fc.assert(fc.property(queries, (search) => {
      const { rig } = parseLink(search, { slings: ['hmpe-8', 'hmpe-10'] });
      if (serialiseLink(rig) !== serialiseLink(EXAMPLE_RIG)) expect([...open(search).classes]).toEqual(['reading']);
    }), { numRuns: 600 });
  });

  it('says the whole rig as read, in the words of the link and of the page, as soon as the page is read', () => {
    const opened = open('?v=1&rating=10&sling=hmpe-8');
    opened.tell('readystatechange');
    expect(opened.places['reading-rig']?.textContent).toBe('rating 10, eye sleeved-wire, bearing unmeasured, sling hmpe-8, length 60, used new, demand rating, oldsling unknown, oldage unknown, olduse unknown, oldlight unknown');
  });

  it('names the page that is built for exactly the rig when the script does not arrive', () => {
    const opened = open('?rating=10&eye=bare-wire&sling=hmpe-8');
    opened.scriptFails();
    opened.tell('readystatechange');
    expect(opened.classes.has('unread')).toBe(true);
    expect(opened.classes.has('reading')).toBe(true);
    expect(opened.places['unread-page']?.href).toBe('/site/compare/10/bare-wire/hmpe-8/');
  });

  it('says that none is built where any other input differs from what the built pages assume', () => {
    for (const search of ['?rating=10&bearing=3.8', '?rating=9.5', '?rating=10&used=used', '?eye=twin-eye', '?rating=10&sling=other']) {
      const opened = open(search);
      opened.tell('comparison-failed');
      expect(opened.places['unread-page']?.href).toBeUndefined();
      expect(opened.places['unread-page']?.textContent).toMatch(/^No page is built for exactly this rig/);
    }
  });

  it('gives up after its patience, and not once the comparison is shown', () => {
    const late = open('?rating=10');
    expect([...late.timers.values()].map(({ after }) => after)).toEqual([8000]);
    for (const { what } of late.timers.values()) what();
    expect(late.classes.has('unread')).toBe(true);
    const shown = open('?rating=10');
    shown.tell('comparison-shown');
    expect(shown.timers.size).toBe(0);
  });
});
