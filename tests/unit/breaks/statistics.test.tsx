/**
 * The statistics of a series as markup, read as a reader gets them. What is the reader's own stands in `data-input`, as the
 * provenance gate asks of every digit; what cannot be given is a sentence, never an empty box or a number that is none.
 */
import type { VNode } from 'preact';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/break-tests/analysis.ts';
import { compareSeries } from '../../../src/break-tests/compare-series.ts';
import type { Pull } from '../../../src/break-tests/pulls.ts';
import { BreaksChart, PullTable, stacked } from '../../../src/components/breaks/chart.tsx';
import { SeriesComparison } from '../../../src/components/breaks/comparison.tsx';
import { SeriesStatistics } from '../../../src/components/breaks/statistics.tsx';
import { percent } from '../../../src/components/breaks/words.ts';

type Node = VNode<{ children?: unknown; 'data-input'?: boolean; 'data-axis'?: boolean }> | string | number | boolean | null | undefined | Node[];

/** All text, and the texts with a digit that stand in no marker. */
function read(node: Node, marked = false): { text: string; bare: string[] } {
  if (node === null || node === undefined || typeof node === 'boolean') return { text: '', bare: [] };
  if (typeof node === 'string' || typeof node === 'number') return { text: String(node), bare: !marked && /\p{N}/u.test(String(node)) ? [String(node)] : [] };
  if (Array.isArray(node)) {
    const parts = node.map((one) => read(one, marked));
    return { text: parts.map(({ text }) => text).join(''), bare: parts.flatMap(({ bare }) => bare) };
  }
  const { type, props } = node;
  if (typeof type === 'function' && type.length > 0) return read((type as (props: unknown) => Node)(props), marked);
  const inside = read(props.children as Node, marked || props['data-input'] === true || props['data-axis'] === true);
  return ['p', 'li', 'td', 'th', 'tr', 'h2', 'h3', 'caption'].includes(type as string) ? { ...inside, text: `${inside.text}\n` } : inside;
}

const pulls = (...forces: (number | [number, string, string?])[]): Pull[] =>
  forces.map((one) => (typeof one === 'number' ? { force: Math.abs(one), atLeast: one < 0, mode: '', link: '' } : { force: Math.abs(one[0]), atLeast: one[0] < 0, mode: one[1], link: one[2] ?? '' }));

/** A negative force is a lower limit. */
const CASES: Readonly<Record<string, Pull[]>> = {
  'one pull': pulls(12.3),
  'one lower limit': pulls(-12.3),
  'two pulls': pulls(11, 12),
  'pulls that are all equal': pulls(20, 20, 20),
  'pulls that all stopped at the limit of the machine': pulls(-20, -20, -20, -20),
  'two pulls far apart': pulls(2, 20),
  'ten pulls of one mode': pulls(...[10, 11, 12, 11, 10, 13, 12, 11, 12, 14].map((force): [number, string, string] => [force, 'at the wire', 'sling'])),
  'twelve pulls of several parts, with lower limits': pulls([13.9, 'a', 'sling'], [14.6, 'a', 'sling'], [-13.2, 'b', 'eye'], [14.1, 'c', 'sling'], [15, 'a', 'sling'], [-14.3, 'b', 'eye'], [-15.2, 'd', 'connector'], -16),
  'forty pulls in newtons': pulls(...Array.from({ length: 40 }, (_, i) => 10000 + 37 * ((i * 7) % 40))),
};

describe.each(Object.entries(CASES))('%s', (_, series) => {
  const analysis = analyse(series);
  const shown = [
    <SeriesStatistics analysis={analysis} unit="kN" isOwn heading="h3" />,
    <BreaksChart pulls={series} analysis={analysis} unit="kN" ticks={[0, 10, 20]} isOwn title="A title" />,
    <PullTable pulls={series} unit="kN" letters={new Map()} isOwn caption="The pulls" />,
    <SeriesComparison compared={compareSeries(series, pulls(9, 10, 11))} names={['one', 'the other']} unit="kN" isOwn />,
  ].map((view) => read(view as Node));

  it('every digit is marked as the reader’s own', () => {
    expect(shown.flatMap(({ bare }) => bare)).toEqual([]);
  });

  it('nothing is said that is no number and no sentence', () => {
    const text = shown.map((one) => one.text).join('\n');
    expect(text).not.toMatch(/NaN|Infinity|undefined|null|\[object/);
    // "In numbers", "Lower bounds", "Distributions", "Pulls far from the rest", "What broke": each is there, with words.
    expect(shown[0]?.text.match(/In numbers|Lower bounds|Distributions|Pulls far from the rest|What broke/g)).toHaveLength(5);
  });
});

it('too few pulls for the smallest one to be a bound say how many it takes: 29, 59 and 299', () => {
  // CMH-17-1G, table 8.5.13, and NIST/SEMATECH: the zero-failure numbers for 90/95, 95/95 and 99/95.
  const { text } = read(<SeriesStatistics analysis={analyse(CASES['ten pulls of one mode'] as Pull[])} unit="kN" isOwn /> as Node);
  for (const needed of [29, 59, 299]) expect(text).toContain(`cannot: takes ${needed} pulls`);
});

it('parts that compete are said to be untestable for independence', () => {
  const { text } = read(<SeriesStatistics analysis={analyse(CASES['twelve pulls of several parts, with lower limits'] as Pull[])} unit="kN" isOwn /> as Node);
  expect(text).toContain('From such pulls nobody can test that.');
  expect(text).toContain('a pull ended with no break');
});

it('a share is never rounded to none or to all', () => {
  const words = [0, 0.00001, 0.004, 0.25, 0.9987, 0.999999, 1].map(percent);
  expect(words.map((word) => word.replace('\u00a0', ' '))).toEqual(['0 %', 'under 0.01 %', '0.40 %', '25 %', '99.87 %', 'over 99.99 %', '100 %']);
});

it('marks that would touch stand on each other, and others on the ground', () => {
  expect(stacked([0, 5, 20], 10).map(({ level }) => level)).toEqual([0, 1, 0]);
});
