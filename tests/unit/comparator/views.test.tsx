/**
 * What stands below the numbers: an open row's working, and the line of the retirement rules. The views are read as text
 * and links, as a reader of the built page gets them. Texts are the project's own rules: a tie is said as one, the word
 * of the verdict comes first, what is not known counts against a sling, and nobody gets a word of praise.
 */
import type { VNode } from 'preact';
import { describe, expect, it } from 'vitest';
import { loadEvidence } from '../../../src/build/evidence.ts';
import { RetirementLine } from '../../../src/components/comparator/retirement-line.tsx';
import type { Frame } from '../../../src/components/comparator/setup.ts';
import { Working } from '../../../src/components/comparator/working.tsx';
import { EXAMPLE_RIG, EYE_IDS } from '../../../src/links/rig-keys.ts';
import { judge } from '../../../src/retirement/judge.ts';
import { countedUnknown, verdictWords } from '../../../src/retirement/verdict-words.ts';
import { compare, pairsOf } from '../../../src/strength/compare.ts';
import type { Evidence, Rig } from '../../../src/strength/types.ts';
import { pairShort } from '../../../src/strength/wording.ts';

const evidence = loadEvidence();

type Node = VNode<{ children?: unknown; href?: string; class?: string }> | string | number | boolean | null | undefined | Node[];

/** Text and addresses of a view, elements on lines of their own. */
function read(node: Node): { text: string; links: string[] } {
  if (node === null || node === undefined || typeof node === 'boolean') return { text: '', links: [] };
  if (typeof node === 'string' || typeof node === 'number') return { text: String(node), links: [] };
  if (Array.isArray(node)) {
    const parts = node.map(read);
    return { text: parts.map(({ text }) => text).join(''), links: parts.flatMap(({ links }) => links) };
  }
  const { type, props } = node;
  if (typeof type === 'function') return read((type as (props: unknown) => Node)(props));
  const inside = read(props.children as Node);
  const isBlock = ['p', 'li', 'ul', 'div', 'th', 'td', 'tr'].includes(type as string);
  return { text: isBlock ? `${inside.text}\n` : inside.text, links: [...(props.href ? [props.href] : []), ...inside.links] };
}

function frameOf(rig: Rig, change: Partial<Frame> = {}): Frame {
  const comparison = compare(evidence, rig);
  return {
    evidence, base: '/', ticks: { kN: [], lbf: [], kgf: [] }, upper: { kn: 15, figure: 'common-practice/upper-mark' }, unit: 'kN',
    ratingKn: rig.ratingKn, demandKn: rig.demandKn, lengthCm: rig.lengthCm, pairsOf: (method) => pairsOf(evidence, comparison, method), stage: 'built', ...change,
  };
}

const RIG: Rig = { ...EXAMPLE_RIG, eye: 'bare-wire', bearingMm: 4 };
const RIGS: Rig[] = Object.keys(evidence.slings).flatMap((sling) => EYE_IDS.map((eye) => ({ ...RIG, sling, eye })));

describe('one method against another', () => {
  it('says who is stronger, and a tie as a tie, from every share of pairs', () => {
    for (let of20 = 0; of20 <= 20; of20 += 1) {
      const words = pairShort(of20 / 20);
      if (of20 >= 13) expect(words).toMatch(/^stronger in (about|more than) \d+ of 20 pairs$/);
      else if (of20 <= 7) expect(words).toMatch(/^weaker in (about|more than) \d+ of 20 pairs$/);
      else expect(words).toBe(`a tie: stronger in about ${of20} of 20 pairs`);
      expect(words).not.toMatch(/\b(?:20|0) of 20/);
    }
  });

  it('stands in the working of every home method with a number, each other one once, and never the maker’s', () => {
    let seen = 0;
    for (const rig of RIGS) {
      const { rows } = compare(evidence, rig);
      const home = rows.filter((row) => row.attachment && evidence.methods[row.method]?.role === 'home');
      for (const row of rows) {
        const lines = read(<Working row={row} frame={frameOf(rig)} />).text.split('\n').filter((line) => / of 20 pairs$/.test(line));
        const others = home.includes(row) ? home.filter((other) => other !== row) : [];
        expect(lines.map((line) => line.slice(0, line.search(/: (?:a tie|stronger|weaker)/)))).toEqual(others.map(({ name }) => name));
        seen += lines.length;
      }
    }
    expect(seen).toBeGreaterThan(20);
  });

  it('says from both sides the same thing: where one is stronger in 17, the other is weaker in 17', () => {
    const { rows } = compare(evidence, RIG);
    const said = new Map(rows.map((row) => [row.name, read(<Working row={row} frame={frameOf(RIG)} />).text]));
    let pairs = 0;
    for (const [name, text] of said) {
      for (const [, other = '', word = '', count = ''] of text.matchAll(/^([^:]+): (stronger|weaker) in (?:about|more than) (\d+) of 20 pairs$/gm)) {
        expect(said.get(other)).toMatch(new RegExp(`^${name}: ${word === 'stronger' ? 'weaker' : 'stronger'} in (?:about|more than) ${count} of 20 pairs$`, 'm'));
        pairs += 1;
      }
    }
    expect(pairs).toBeGreaterThan(3);
  });
});

describe('the working of a row', () => {
  it('names the figures that move the answer most, each a link to its page; an assumed factor leads to its own page', () => {
    let assumed = 0;
    for (const rig of RIGS) {
      for (const row of compare(evidence, rig).rows.filter(({ moves }) => moves.length > 0)) {
        const { text, links } = read(<Working row={row} frame={frameOf(rig)} />);
        const shown = row.moves.filter((move, i) => i === 0 || move.share >= 0.01);
        expect([...text.matchAll(/(\d+) % of the spread/g)].map((match) => Number(match[1]))).toEqual(shown.map(({ share }) => Math.round(share * 100)));
        for (const { factor, figures } of shown) {
          for (const id of figures) {
            expect(links).toContain(`/figures/${id.split('#')[0]}/${id.includes('#') ? `#${id.split('#')[1]}` : ''}`);
            expect(text).toContain(evidence.figures[id]?.what);
          }
          if (figures.length > 0) continue;
          expect(links).toContain(`/figures/assumed/factor-${factor}/`);
          assumed += 1;
        }
      }
    }
    expect(assumed).toBeGreaterThan(0);
  });

  it('says the finished length with what it was made from, and that what knots take off is assumed', () => {
    const row = compare(evidence, RIG).rows.find(({ method }) => method === 'basket-overhand');
    if (!row || row.finishedCm === null) throw new Error('the overhand basket has a finished length');
    const { text, links } = read(<Working row={row} frame={frameOf(RIG)} />);
    // Half of 60 cm, less nine widths of 10.5 mm (data/methods/basket-overhand.yaml): 30 - 9.45.
    expect(text).toContain('Finished about 21 cm of 60 cm: half the sling, less the knot and half a turn round the eye; what that takes off is assumed.');
    expect(links).toContain('/figures/assumed/method-basket-overhand/');
    expect(text).toContain('On the rack: Four strands and a knot of four, a bulky one.');
  });

  it('says no length where the sling’s is not known', () => {
    const rig = { ...RIG, lengthCm: null };
    for (const row of compare(evidence, rig).rows) expect(read(<Working row={row} frame={frameOf(rig)} />).text).not.toContain('Finished about');
  });

  it('draws the chain only where the script draws, and leaves alone what was built while it takes over', () => {
    const row = compare(evidence, RIG).rows.find(({ method }) => method === 'girth-hitch');
    if (!row) throw new Error('there is a girth hitch');
    expect(read(<Working row={row} frame={frameOf(RIG)} />).text).not.toContain('weak link');
    expect(read(<Working row={row} frame={frameOf(RIG, { stage: 'drawn' })} />).text).toContain('weak link');
    const kept = Working({ row, frame: frameOf(RIG, { stage: 'kept' }) });
    expect(kept.props).toMatchObject({ class: 'working', dangerouslySetInnerHTML: { __html: '' } });
  });
});

describe('the retirement line', () => {
  /** Rules made for this test, with round invented years. */
  const rules: Evidence['rules'] = {
    age: { order: 1, verdict: 'retire', when: {}, says: 'Nothing lasts longer.', figures: ['invented/age'], years: 10 },
    used: { order: 2, verdict: 'inspect', when: { materials: ['hmpe'], uses: ['weekly', 'daily'] }, says: 'Used ones were found weak.', figures: ['invented/used'], years: 3 },
    sun: { order: 3, verdict: 'inspect', when: { materials: ['nylon'], exposures: ['light'] }, says: 'The sun weakens it.', figures: ['invented/sun'], years: null },
  };
  const line = (old: Rig['old'], sling = 'hmpe-10') => read(
    <RetirementLine evidence={{ rules, slings: evidence.slings }} comparison={compare(evidence, { ...RIG, sling, old })} frame={frameOf(RIG)} />);

  it('says of the new sling its limits from manufacture, the strictest verdict first, and holds no use or light against it', () => {
    const { text, links } = line(null);
    expect(text.split('\n').filter(Boolean)).toEqual([
      'This sling, from its date of manufacture: retire by 10 years. Nothing lasts longer. (invented/age)',
      'Daily use, sun, a fall, or what an inspection finds can end it sooner.',
      'Has it to go? Who can replace the sling',
    ]);
    expect(links).toEqual(['/figures/invented/age/', '/retire/', '/replace/']);
    expect(line(null, 'nylon-16').text).not.toContain('The sun weakens it');
  });

  it('puts the old sling first, verdict word first, then every reason, the strictest first', () => {
    expect(line({ material: 'hmpe', ageYears: 12, use: 'weekly', light: 'dark' }).text.split('\n').filter(Boolean).slice(0, 2)).toEqual([
      'Old sling: retire now. Nothing lasts longer. (invented/age)', 'inspect now. Used ones were found weak. (invented/used)',
    ]);
    expect(line({ material: 'hmpe', ageYears: 7.5, use: 'stored', light: 'dark' }).text).toMatch(/^Old sling: retire by 2\.5 years from now\. Nothing lasts longer/);
    expect(line({ material: 'nylon', ageYears: 9, use: 'daily', light: 'sun' }).text.split('\n').filter(Boolean).slice(0, 2)).toEqual([
      'Old sling: inspect now. The sun weakens it. (invented/sun)', 'retire by 1 year from now. Nothing lasts longer. (invented/age)',
    ]);
  });

  it('says what is not known and so counts against the old sling', () => {
    expect(line({ material: null, ageYears: null, use: 'stored', light: null }).text.split('\n').filter(Boolean).slice(0, 2)).toEqual([
      'Old sling: retire now, as its age is not known. Nothing lasts longer. (invented/age)',
      'inspect now, as its material and light are not known. The sun weakens it. (invented/sun)',
    ]);
  });

  it('is not there without a rule, without a sling, or for a sling that no rule speaks of', () => {
    const of = (rig: Rig, some: Evidence['rules']) => read(<RetirementLine evidence={{ rules: some, slings: evidence.slings }} comparison={compare(evidence, rig)} frame={frameOf(RIG)} />);
    expect(of(RIG, {})).toEqual({ text: '', links: [] });
    expect(of({ ...RIG, sling: null }, rules)).toEqual({ text: '', links: [] });
    expect(of(RIG, { sun: rules['sun'] as Evidence['rules'][string] }).text).toBe('');
  });

  it('never gives a word of praise, whatever the sling, by the rules of the records', () => {
    for (const material of [null, 'hmpe', 'nylon', 'polyester'] as const) {
      for (const ageYears of [null, 0, 3, 9.9, 30]) {
        for (const use of [null, 'stored', 'daily'] as const) {
          const sling = { material, ageYears, use, light: null };
          for (const judgement of judge(evidence.rules, sling)) {
            expect(verdictWords(judgement, ' from now')).toMatch(/^(retire|inspect) (now|by \d+(?:\.\d{1,2})? years? from now)$/);
            const unknown = countedUnknown(evidence.rules[judgement.rule] as Evidence['rules'][string], sling);
            expect(unknown ?? '').toMatch(/^$|^its (material|age|use|light)( and (age|use|light))* (is|are) not known$/);
          }
          if (material === null && ageYears === null) continue;
          const text = read(<RetirementLine evidence={evidence} comparison={compare(evidence, { ...RIG, old: sling })} frame={frameOf(RIG)} />).text;
          expect(text).not.toMatch(/\bsafe|\bfine\b|\bgood\b|\bhold/i);
        }
      }
    }
  });

  it('gives years to a hundredth, without the crumbs of a difference', () => {
    // 10 - 9.9 is 0.09999999999999964 in doubles (IEEE 754).
    expect(verdictWords({ rule: 'age', verdict: 'retire', due: false, yearsLeft: 10 - 9.9 })).toBe('retire by 0.1 years');
    expect(verdictWords({ rule: 'age', verdict: 'retire', due: false, yearsLeft: 1 })).toBe('retire by 1 year');
    expect(verdictWords({ rule: 'age', verdict: 'retire', due: true, yearsLeft: null })).toBe('retire now');
  });
});
