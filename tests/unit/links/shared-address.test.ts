/**
 * What "Copy link" and the page that hands pages on write. Expected addresses are written by hand from the grammar of
 * comparison links; the list of those handed out only grows.
 */
import { existsSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLink } from '../../../src/links/parse-link.ts';
import { parsePath, PREBUILT_EYES, PREBUILT_RATINGS_KN, sharedAddress } from '../../../src/links/prebuilt-path.ts';
import { EXAMPLE_RIG, EYE_IDS } from '../../../src/links/rig-keys.ts';
import { comparisonToSend, ownAddress, parseSendLink } from '../../../src/links/send-link.ts';
import type { Rig } from '../../../src/strength/types.ts';
import { ROOT } from '../../support/step.ts';

const slings = ['aramid-cord', 'hmpe-8', 'hmpe-10', 'nylon-16', 'nylon-cord-7'];
const vocabulary = { slings };
const site = { origin: 'https://example.org', base: '/slings/' };
const today = { evidence: '2026-12-01.1', model: 3 };
const REST = 'bearing=unmeasured&length=60&used=new&demand=rating&oldsling=unknown&oldage=unknown&olduse=unknown&oldlight=unknown';

/** Reads an address as the page below it does: what the page was built for, then its query. */
function opened(address: string): ReturnType<typeof parseLink> {
  const [path = '', query = ''] = address.split('?');
  const page = parsePath(path.replace(/^\/?compare\//, '/compare/'), vocabulary);
  expect(page.notUnderstood).toEqual([]);
  return parseLink(query, vocabulary, page.rig);
}

describe('the address of a comparison that is handed on', () => {
  it('lies below the page that is built for its rating, eye and sling, with all the rest in the query', () => {
    expect(sharedAddress({ ...EXAMPLE_RIG, ratingKn: 13, eye: 'bare-wire', sling: 'nylon-16' })).toBe(`compare/13/bare-wire/nylon-16/?v=1&${REST}`);
    expect(sharedAddress({ ...EXAMPLE_RIG, bearingMm: 3.8 }, today)).toBe(`compare/12/sleeved-wire/hmpe-10/?v=1&${REST.replace('unmeasured', '3.8')}&d=2026-12-01.1&m=3`);
  });

  it('has everything in the query where no page is built', () => {
    for (const [change, piece] of [[{ ratingKn: 12.5 }, 'rating=12.5'], [{ ratingKn: null }, 'rating=unknown'], [{ eye: 'twin-eye' }, 'eye=twin-eye'], [{ sling: null }, 'sling=unknown']] as const) {
      const address = sharedAddress({ ...EXAMPLE_RIG, ...change });
      expect(address.startsWith('compare/?v=1&rating=')).toBe(true);
      expect(address).toContain(piece);
    }
  });

  it('gives back every rig, whether a page is built for it or not', () => {
    const rigs: fc.Arbitrary<Rig> = fc.record({
      ratingKn: fc.option(fc.oneof(fc.constantFrom<number>(...PREBUILT_RATINGS_KN), fc.double({ min: 1, max: 40, noNaN: true })), { nil: null }),
      eye: fc.option(fc.constantFrom(...EYE_IDS), { nil: null }),
      bearingMm: fc.option(fc.double({ min: 1, max: 40, noNaN: true }), { nil: null }),
      sling: fc.option(fc.constantFrom(...slings), { nil: null }),
      lengthCm: fc.option(fc.integer({ min: 5, max: 500 }), { nil: null }),
      slingState: fc.constantFrom('new' as const, 'used' as const),
      demandKn: fc.option(fc.integer({ min: 1, max: 60 }), { nil: null }),
      old: fc.constantFrom(null, { material: 'hmpe' as const, ageYears: 4, use: null, light: 'sun' as const }),
    });
    let built = 0;
    fc.assert(fc.property(rigs, (rig) => {
      const address = sharedAddress(rig, today);
      if (!address.startsWith('compare/?')) built += 1;
      const link = opened(address);
      expect(link.rig).toEqual(rig);
      expect(link.notUnderstood).toEqual([]);
      expect([link.d, link.m]).toEqual([today.evidence, today.model]);
    }), { numRuns: 2000 });
    expect(built).toBeGreaterThan(100);
  });

  const handed = JSON.parse(readFileSync(new URL('./shared-addresses.json', import.meta.url), 'utf8')) as { address: string; rig: Rig }[];
  for (const { address, rig } of handed) {
    it(`still means the same: ${address}`, () => {
      expect(opened(address).rig).toEqual(rig);
      // A page that such an address lies below is built for good.
      const [, rating, eye, sling] = /^\/compare\/([^/?]+)\/([^/]+)\/([^/]+)\//.exec(address) ?? [];
      if (rating === undefined) return;
      expect(PREBUILT_RATINGS_KN.map(String)).toContain(rating);
      expect(PREBUILT_EYES).toContain(eye);
      expect(existsSync(`${ROOT}/data/slings/${sling}.yaml`)).toBe(true);
    });
  }
});

describe('the page that hands a page on', () => {
  it('takes an address of this site in full or from its folder on, and nothing else', () => {
    for (const [words, address] of [
      ['https://example.org/slings/figures/', 'https://example.org/slings/figures/'],
      [' /slings/compare/?v=1&rating=9#basket ', 'https://example.org/slings/compare/?v=1&rating=9#basket'],
      ['teach/kit/', 'https://example.org/slings/teach/kit/'],
    ]) expect(ownAddress(words as string, site)).toEqual({ address });
    for (const words of [
      'https://elsewhere.example/slings/', '//elsewhere.example/slings/', 'http://example.org/slings/', 'https://example.org/', '/other/', '../', 'javascript:alert(1)',
      'data:text/html,x', 'https://me@example.org/slings/', 'https://:word@example.org/slings/', 'https://example.org:8443/slings/', '\\\\elsewhere.example', 'https://',
    ]) expect(ownAddress(words, site), words).toEqual({ why: 'not a page of this site' });
    expect(ownAddress(' ', site)).toEqual({ why: 'empty' });
  });

  it('takes any string without throwing, and never leads to another site', () => {
    const near = fc.array(fc.constantFrom('https:', 'javascript:', '/', '\\', '//', 'example.org', '/slings/', '@', ':', '?', '#', '..', '%2f', '\t', 'x'), { maxLength: 8 }).map((parts) => parts.join(''));
    fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), near), (words) => {
      const sent = ownAddress(words, site);
      if ('address' in sent) expect(sent.address.startsWith('https://example.org/slings/')).toBe(true);
      const { to, notUnderstood } = parseSendLink(words);
      expect(to === null || typeof to === 'string').toBe(true);
      for (const { why } of notUnderstood) expect(why).not.toBe('');
    }), { numRuns: 3000 });
  });

  it.each(JSON.parse(readFileSync(new URL('./send-links.json', import.meta.url), 'utf8')) as { query: string; to: string }[])('still reads an old link, of a list that only grows: $query', ({ query, to }) => {
    expect(parseSendLink(query)).toEqual({ to, notUnderstood: [] });
  });

  it('reads its own link, and lists what it does not know', () => {
    expect(parseSendLink('?to=%2Fslings%2Fcompare%2F%3Fv%3D1%26rating%3D9')).toEqual({ to: '/slings/compare/?v=1&rating=9', notUnderstood: [] });
    expect(parseSendLink('?to=a&to=a&to=b&x=1&to=%E0&%E0=a')).toEqual({ to: 'a', notUnderstood: [
      { piece: '%E0=a', why: 'percent signs that do not decode' }, { piece: 'to=b', why: 'a second page; the first is used' },
      { piece: 'x=1', why: 'nothing is called "x"' }, { piece: 'to=%E0', why: 'percent signs that do not decode' },
    ] });
    expect(parseSendLink('x=1')).toMatchObject({ to: null });
  });

  it('gives a comparison the page with its picture and the evidence of today; one that says what it was made with keeps that', () => {
    const send = (path: string) => comparisonToSend(`https://example.org/slings/${path}`, site, vocabulary, today)?.address;
    expect(send('compare/?v=1&rating=9&eye=bare-wire')).toBe(`https://example.org/slings/compare/9/bare-wire/hmpe-10/?v=1&${REST}&d=2026-12-01.1&m=3`);
    expect(send('compare/9/bare-wire/nylon-16/?bearing=4#basket')).toBe(`https://example.org/slings/compare/9/bare-wire/nylon-16/?v=1&${REST.replace('unmeasured', '4')}&d=2026-12-01.1&m=3#basket`);
    expect(send('compare/?rating=9&eye=bare-wire&d=2026-11-25.1&m=1&f=4~9~&unit=lbf')).toBe(`https://example.org/slings/compare/9/bare-wire/hmpe-10/?v=1&${REST}&d=2026-11-25.1&m=1&f=4~9~&unit=lbf`);
    expect(send('compare/?sort=name&oldlight=sun&t=a~b')).toBe(`https://example.org/slings/compare/12/sleeved-wire/hmpe-10/?v=1&${REST.replace('oldlight=unknown', 'oldlight=sun')}&d=2026-12-01.1&m=3&sort=name&t=a~b`);
  });

  it('leaves alone what is no comparison, and a link that is not understood in full', () => {
    const send = (path: string) => comparisonToSend(`https://example.org/slings/${path}`, site, vocabulary, today);
    for (const path of ['figures/', 'compare/?rating=900', 'compare/9/bare-wire/rope/', 'compare/9/', 'embed/compare/9/bare-wire/hmpe-10/']) expect(send(path), path).toBeNull();
    // One that says half of what it was made with keeps that half, and its rig is told.
    for (const half of ['m=2', 'd=2026-11-25.1']) {
      expect(send(`compare/?rating=9&${half}`)).toEqual({ address: `https://example.org/slings/compare/?rating=9&${half}`, rig: { ...EXAMPLE_RIG, ratingKn: 9 } });
    }
  });
});
