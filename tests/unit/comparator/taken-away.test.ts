/**
 * What can be taken away of a comparison says the same as the page, to the digit, for every sling on every eye. Formats
 * are checked by the standards themselves: RFC 4180 for the table, RFC 8259 by the runtime's own reader, XML 1.0 (5th
 * edition) sections 2.4, 3.1 and 3.3 for the picture.
 */
import { describe, expect, it } from 'vitest';
import { loadEvidence } from '../../../src/build/evidence.ts';
import { comparisonCsv } from '../../../src/components/comparator/comparison-csv.ts';
import { comparisonJson } from '../../../src/components/comparator/comparison-json.ts';
import { comparisonSvg } from '../../../src/components/comparator/comparison-svg.ts';
import { comparisonText } from '../../../src/components/comparator/comparison-text.ts';
import { takenAway } from '../../../src/components/comparator/taken-away.ts';
import { EXAMPLE_RIG, EYE_IDS, FORCE_UNITS } from '../../../src/links/rig-keys.ts';
import { compare } from '../../../src/strength/compare.ts';
import { methodData } from '../../../src/strength/method-data.ts';
import type { Comparison, Rig } from '../../../src/strength/types.ts';
import { aboveShort, CAUTION_LINE, certaintyWords, countsDevice, lowAndMiddle, MAKER_FIRST_LINE, shownSpread } from '../../../src/strength/wording.ts';
import { comparison, evenDots, row } from '../../support/comparison-fixture.ts';

const evidence = loadEvidence();
const LINK = 'https://example.org/compare/?v=1&rating=12';

/** Every sling on every kind of eye, measured and not, against the rating and against a demand. */
const RIGS: Rig[] = Object.keys(evidence.slings).flatMap((sling) => [...EYE_IDS, null].flatMap((eye) => [
  { ...EXAMPLE_RIG, sling, eye },
  { ...EXAMPLE_RIG, sling, eye, bearingMm: 4, demandKn: 9.5 },
]));
const COMPARISONS: Comparison[] = RIGS.map((rig) => compare(evidence, rig));

/** Cells of a table, quotes taken off: RFC 4180, sections 2.5 to 2.7. */
function cellsOf(csv: string): Record<string, string>[] {
  const lines: string[][] = [[]];
  for (const [, field = '', end] of csv.matchAll(/("(?:[^"]|"")*"|[^,\r\n]*)(,|\r\n)/g)) {
    lines.at(-1)?.push(field.startsWith('"') ? field.slice(1, -1).replaceAll('""', '"') : field);
    if (end !== ',') lines.push([]);
  }
  const [head = [], ...rows] = lines.filter((line) => line.length > 0);
  return rows.map((cells) => {
    expect(cells).toHaveLength(head.length);
    return Object.fromEntries(head.map((name, i) => [name, cells[i] ?? '']));
  });
}

/** Low value and middle as the page prints them. */
const printed = (text: string): [string, string] | null => {
  const found = /1 in 20 below ([\d.]+), half below ([\d.]+) /.exec(text);
  return found && [found[1] as string, found[2] as string];
};

/** Elements of a text that follows XML 1.0 as far as it is checked here; throws where it does not. */
function elementsOf(xml: string): { name: string; attributes: Record<string, string>; text: string }[] {
  const open: { name: string; attributes: Record<string, string>; text: string }[] = [];
  const all: typeof open = [];
  const resolve = (text: string): string => text.replace(/&([^;]*);?/g, (whole, entity: string) => {
    const number = /^#(\d+)$/.exec(entity)?.[1];
    if (number === undefined && !['amp', 'lt', 'gt', 'quot', 'apos'].includes(entity)) throw new Error(`no entity: ${whole}`);
    return number === undefined ? whole : String.fromCharCode(Number(number));
  });
  for (const [whole, tag] of xml.matchAll(/<([^<>]*(?:"[^"]*"[^<>"]*)*)>|[^<]+/g)) {
    if (tag === undefined) {
      const top = open.at(-1);
      if (!top) throw new Error(`text outside the root: ${whole}`);
      top.text += resolve(whole);
    } else if (tag.startsWith('/')) {
      if (open.pop()?.name !== tag.slice(1)) throw new Error(`${tag} closes another element`);
    } else {
      const name = /^[a-zA-Z][\w-]*/.exec(tag)?.[0];
      if (!name) throw new Error(`no name: <${tag}>`);
      const attributes: Record<string, string> = {};
      const rest = tag.slice(name.length).replace(/\/$/, '').replace(/\s+([\w:-]+)="([^"<]*)"/g, (_, key: string, value: string) => {
        if (key in attributes) throw new Error(`${key} twice in <${tag}>`);
        attributes[key] = resolve(value);
        return '';
      });
      if (rest.trim() !== '') throw new Error(`not an attribute: ${rest}`);
      const element = { name, attributes, text: '' };
      all.push(element);
      if (!tag.endsWith('/')) open.push(element);
    }
  }
  if (open.length > 0) throw new Error(`${open.at(-1)?.name} is not closed`);
  return all;
}

/** A drawing as the page hands it over. */
const drawn = (method: string | null): string[] => method === null
  ? ['<svg xmlns="http://www.w3.org/2000/svg" class="axis" viewBox="0 0 600 50"><text x="0" y="40">0</text></svg>']
  : ['lane', 'strip'].map((name) => `<svg xmlns="http://www.w3.org/2000/svg" class="${name}" viewBox="0 0 600 ${name === 'lane' ? 52 : 30}" data-of="${method}"><path d="M0 0"/></svg>`);

const picture = (of: Comparison): string => comparisonSvg({ comparison: of, unit: 'kN', sort: 'low', slings: evidence.slings, link: LINK, drawn });

describe('page, table, JSON and text', () => {
  it('say the same low value and middle to the digit, for every sling on every eye in every unit', () => {
    let compared = 0;
    for (const of of COMPARISONS) {
      for (const unit of FORCE_UNITS) {
        const table = cellsOf(comparisonCsv(of, unit, LINK));
        const json = JSON.parse(comparisonJson(of, unit, LINK)) as { unit: string; methods: ReturnType<typeof methodData<number>>[] };
        const text = comparisonText(of, evidence.slings, unit, LINK).split('\n');
        const part = countsDevice(of.rig) ? 'rig' : 'attachment';
        expect(json.unit).toBe(unit);
        expect(json.methods.map(({ id }) => id)).toEqual(of.rows.map(({ method }) => method));
        expect(table.map((line) => line['method_id'])).toEqual(of.rows.map(({ method }) => method));
        for (const [i, one] of of.rows.entries()) {
          const spread = shownSpread(one, of.rig);
          const page = spread && printed(lowAndMiddle(spread, unit));
          const line = table[i] ?? {};
          const method = json.methods[i];
          expect(line[`${part}_one_in_20_below`]).toBe(page?.[0] ?? '');
          expect(line[`${part}_half_below`]).toBe(page?.[1] ?? '');
          expect(method?.[part]?.low ?? null).toBe(page ? Number(page[0]) : null);
          expect(method?.[part]?.middle ?? null).toBe(page ? Number(page[1]) : null);
          expect(line['certainty']).toBe(one.certainty ?? '');
          expect(method?.certainty).toBe(one.certainty);
          expect([line['state'], line['group']]).toEqual([method?.state, method?.group]);
          if (!page) continue;
          const said = text.find((sentence) => sentence.replace(/^- (?:\d+\. )?/, '').startsWith(`${one.name}:`)) ?? '';
          expect(said).toContain(`1 in 20 breaks below ${page[0]} ${unit}`);
          expect(said).toContain(`Half break below ${page[1]} ${unit}`);
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(500);
  });

  it('give a force in kN with one decimal, as the page does', () => {
    const [line] = cellsOf(comparisonCsv(comparison([row({ attachment: { low: 10, middle: 12.34, high: 17.06 } })]), 'kN', LINK));
    expect([line?.['attachment_one_in_20_below'], line?.['attachment_half_below'], line?.['attachment_nineteen_in_20_below']]).toEqual(['10.0', '12.3', '17.1']);
  });

  it('count the same rigs of twenty as the sentence, and never all or none', () => {
    for (const [dots, said, count] of [[evenDots(9, 0.4), 'About 12 of 20 break above 12 kN', 12], [evenDots(20, 0.1), 'More than 19 of 20 break above 12 kN', 19], [evenDots(1, 0.1), 'Fewer than 1 of 20 break above 12 kN', 1]] as const) {
      const one = comparison([row({ dots })]);
      expect(aboveShort(one.rows[0] as (typeof one.rows)[number], 12, 'kN')).toBe(said);
      expect(cellsOf(comparisonCsv(one, 'kN', LINK))[0]?.['of_20_above_line']).toBe(String(count));
      expect(JSON.parse(comparisonJson(one, 'kN', LINK)).methods[0].aboveOf20).toBe(count);
    }
  });

  it('name what breaks first, most often first, and never twenty of twenty', () => {
    const mixed = JSON.parse(comparisonJson(comparison([row()]), 'kN', LINK)).methods[0].firstOf20;
    expect(mixed).toEqual([{ letter: 'S', link: 'the sling at the eye', count: 16 }, { letter: 'D', link: 'the device', count: 4 }]);
    const [alone] = JSON.parse(comparisonJson(comparison([row({ strip: 'S'.repeat(20) })]), 'kN', LINK)).methods[0].firstOf20;
    expect(alone).toEqual({ letter: 'S', link: 'the sling at the eye', count: 19 });
    expect(cellsOf(comparisonCsv(comparison([row()]), 'kN', LINK))[0]?.['breaks_first_of_20']).toBe('S 16; D 4');
  });
});

describe('a comparison as JSON', () => {
  it('carries caution, evidence, model, link and the rig as it was given', () => {
    const one = comparison([row()]);
    const json = JSON.parse(comparisonJson(one, 'lbf', LINK));
    expect(json.caution).toEqual([MAKER_FIRST_LINE, CAUTION_LINE]);
    expect(json).toMatchObject({ evidence: '2026-01-01.1', model: 1, link: LINK, unit: 'lbf', summary: 'One sentence.' });
    expect(json.rig).toEqual(one.rig);
    expect(json.bearing).toEqual({ mm: 3.5, measured: false });
    expect(json.methods[0]).toMatchObject({ id: 'basket-overhand', state: 'result', group: 'ranked', place: 1, reason: [], figures: ['invented/breaks'] });
  });

  it('has the fields of the command, whose forces keep all their digits', () => {
    const of = compare(evidence, { ...EXAMPLE_RIG, bearingMm: 4, eye: 'bare-wire' });
    const all = of.rows.map((one) => methodData(one, of.rig, (kn) => kn));
    const json = JSON.parse(comparisonJson(of, 'kN', LINK)) as { methods: typeof all };
    expect(json.methods.map((method) => Object.keys(method))).toEqual(all.map((method) => Object.keys(method)));
    for (const [i, method] of all.entries()) {
      expect(method.attachment).toEqual(of.rows[i]?.attachment);
      if (method.attachment) expect(Math.abs(method.attachment.low - (json.methods[i]?.attachment?.low ?? Number.NaN))).toBeLessThanOrEqual(0.05 + 1e-9);
    }
  });
});

describe('a comparison as a picture', () => {
  it('is XML for every sling on every eye, with the drawings of each row that has dots and of no other', () => {
    for (const of of COMPARISONS) {
      const elements = elementsOf(picture(of));
      expect(elements[0]?.attributes['xmlns']).toBe('http://www.w3.org/2000/svg');
      const drawings = elements.flatMap(({ attributes }) => attributes['data-of'] ?? []);
      const withDots = of.rows.filter(({ dots }) => dots.length > 0).map(({ method }) => method);
      expect([...drawings].sort()).toEqual([...withDots, ...withDots].sort());
    }
  });

  it('says the finding first, then the rig, the maker before any home method, and the caution and the link at its foot', () => {
    const maker = row({ method: 'makers-sling', name: 'The maker’s own', group: 'maker', certainty: null });
    delete maker.place;
    const svg = picture(comparison([maker, row()]));
    const said = elementsOf(svg).map(({ text }) => text).join('\n');
    const order = ['One sentence.', 'Rig: 12 kN', 'WARNING', 'The maker’s own', '1. Basket, overhand', 'One slow pull, new, dry', 'Evidence 2026-01-01.1, model 1.', 'rating=12'].map((piece) => said.indexOf(piece));
    expect(order.every((place) => place >= 0)).toBe(true);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    expect(elementsOf(svg).find(({ name }) => name === 'title')?.text).toBe('One sentence.');
  });

  it('prints for each row the words of the page: count, low value and middle, certainty, reasons', () => {
    const of = compare(evidence, { ...EXAMPLE_RIG, bearingMm: 4, eye: 'bare-wire' });
    const said = elementsOf(picture(of)).map(({ text }) => text).join(' ');
    for (const one of of.rows.filter(({ dots }) => dots.length > 0)) {
      const spread = shownSpread(one, of.rig);
      expect(said).toContain(aboveShort(one, 12, 'kN'));
      expect(said).toContain(spread && lowAndMiddle(spread, 'kN'));
      expect(said).toContain(certaintyWords(one));
      for (const reason of one.reasons) expect(said).toContain(reason.slice(0, 40));
    }
  });

  it('keeps text as text: signs of markup in a name or a link make no element', () => {
    const name = 'A & B <script> "quoted"';
    const svg = picture({ ...comparison([row({ name })]), summary: '1 < 2 & 3 > 2' });
    const elements = elementsOf(svg);
    expect(elements.some((element) => element.name === 'script')).toBe(false);
    expect(elements.map(({ text }) => text)).toContain(`1. ${name}`);
    expect(elements.find((element) => element.name === 'title')?.text).toBe('1 < 2 & 3 > 2');
  });

  it('has no letters smaller than 12 px at 800 px width, and no line that leaves the picture where a letter takes 8.5 px', () => {
    const elements = elementsOf(picture(COMPARISONS[0] as Comparison));
    const sizes = [...picture(COMPARISONS[0] as Comparison).matchAll(/font(?:-size)?:(\d+)px/g)].map((match) => Number(match[1]));
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(12);
    for (const { name, attributes, text } of elements) {
      if (name !== 'text' || attributes['class'] === undefined) continue;
      // Bold and large letters take more; 8.5 px is a wide face at 14 px.
      expect(Number(attributes['x']) + text.length * (attributes['class'].includes('t') ? 11.5 : 8.2)).toBeLessThanOrEqual(800);
    }
    expect(elements[0]?.attributes['width']).toBe('800');
  });
});

it('the table that is saved begins with the mark of UTF-8, the others without', () => {
  const shown = { comparison: comparison([row()]), unit: 'kN', sort: 'low', slings: evidence.slings, link: LINK, drawn } as const;
  expect(takenAway.csv(shown).charCodeAt(0)).toBe(0xfeff);
  for (const how of ['text', 'json', 'svg'] as const) expect(takenAway[how](shown).charCodeAt(0)).not.toBe(0xfeff);
});
