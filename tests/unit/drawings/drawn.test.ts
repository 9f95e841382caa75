/** What a reader meets: room between strands, letters of a readable size, small files, words for those who cannot see. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { cross } from '../../../src/drawings/crossings.ts';
import { allDrawings, drawingFiles, drawingsOf } from '../../../src/drawings/drawings.ts';
import { FILE_STYLE, PAGE_STYLE } from '../../../src/drawings/style.ts';
import { widthOf } from '../../../src/drawings/strokes.ts';
import { inlineSvg } from '../../../src/drawings/svg.ts';
import { ROOT } from '../../support/step.ts';

const records = readdirSync(join(ROOT, 'data/methods')).map((name) => ({ id: name.replace('.yaml', ''), record: parse(readFileSync(join(ROOT, 'data/methods', name), 'utf8')) }));
const drawings = allDrawings();
const everyDrawing = [...drawings, ...drawingsOf('lessons')];
const named = everyDrawing.map((drawing) => [`${drawing.method} ${drawing.frame}`, drawing] as const);

test('every method on record has a finished drawing, and no drawing is of another', () => {
  expect(new Set(drawings.map(({ method }) => method))).toEqual(new Set(records.map(({ id }) => id)));
  for (const { id } of records) expect(drawingsOf(id)[0]?.frame, id).toBe('right');
});

test('a method that one clipping error releases is drawn with that error', () => {
  for (const { id, record } of records.filter(({ record }) => record.oneClipError.releases)) {
    const wrong = drawingsOf(id).find(({ frame }) => frame === 'wrong');
    expect(wrong?.caption, `${id}: ${record.oneClipError.what}`).toMatch(/not clipped/);
  }
});

test('a method that is never set apart for every eye, and needs no seam, has steps', () => {
  const homeMade = records.filter(({ record }) => record.role === 'home' && !record.oneClipError.releases && !(record.apart ?? []).some((one: { when?: unknown }) => !one.when) && !/quick-link|beer-knot/.test(record.name.toLowerCase().replace(/ /g, '-')));
  expect(homeMade.length).toBeGreaterThan(4);
  for (const { id } of homeMade) expect(drawingsOf(id).filter(({ frame }) => frame.startsWith('step')).length, id).toBeGreaterThanOrEqual(3);
});

test.each(named)('%s: strands that do not cross keep clear of one another', (_name, { scene }) => {
  const { curves, strands, crossings } = cross(scene.strands);
  const near: string[] = [];
  const around = (strand: number, at: number) => crossings.flatMap(({ over, under }) => [over, under].filter((one) => {
    const { length, closed } = curves[strand] as (typeof curves)[number];
    const apart = Math.abs(one.at - at);
    return one.strand === strand && Math.min(apart, closed ? length - apart : apart) < 26;
  }));
  /** Whether two places lie where one open strand goes on as another. */
  const goesOn = (i: number, at: number, j: number, there: number, room: number): boolean => {
    const ends = (strand: number) => { const { closed, length, samples } = curves[strand] as (typeof curves)[number]; return closed ? [] : [{ at: 0, point: samples[0] }, { at: length, point: samples.at(-1) }]; };
    return ends(i).some((one) => ends(j).some((two) => Math.hypot((one.point?.[0] ?? 0) - (two.point?.[0] ?? 0), (one.point?.[1] ?? 0) - (two.point?.[1] ?? 0)) < 12 && Math.abs(one.at - at) + Math.abs(two.at - there) < 3.2 * room));
  };
  curves.forEach((curve, i) => {
    for (let j = i; j < curves.length; j++) {
      const other = curves[j] as typeof curve;
      const room = (widthOf((strands[i] as (typeof strands)[number]).kind) + widthOf((strands[j] as (typeof strands)[number]).kind)) / 2;
      curve.samples.forEach((a, k) => {
        if (k % 2) return;
        other.samples.forEach((b, l) => {
          if (l % 2 || Math.abs(a[0] - b[0]) > room || Math.abs(a[1] - b[1]) > room) return;
          const [at, there] = [curve.along[k] as number, other.along[l] as number];
          if (i === j) {
            const between = Math.abs(at - there);
            if (Math.min(between, curve.closed ? curve.length - between : between) < 3.2 * room) return;
          }
          if (Math.hypot(a[0] - b[0], a[1] - b[1]) >= room || (i !== j && goesOn(i, at, j, there, room))) return;
          const met = around(i, at);
          if (met.some((one) => around(j, there).length > 0 && crossings.some(({ over, under }) => (over === one && under.strand === j && around(j, there).includes(under)) || (under === one && over.strand === j && around(j, there).includes(over))))) return;
          near.push(`${(strands[i] as (typeof strands)[number]).name} and ${(strands[j] as (typeof strands)[number]).name} at ${Math.round(a[0])},${Math.round(a[1])}`);
        });
      });
    }
  });
  expect([...new Set(near)].slice(0, 5)).toEqual([]);
});

test.each(named)('%s: everything lies within the drawing', (_name, { scene }) => {
  for (const curve of cross(scene.strands).curves) {
    for (const [x, y] of curve.samples) {
      expect(x).toBeGreaterThan(4);
      expect(x).toBeLessThan(316);
      if (scene.from === undefined) expect(y).toBeGreaterThan(2);
      expect(y).toBeLessThan(scene.height - 2);
    }
  }
});

// The budget of the issue: under about four kilobytes packed.
test.each(drawingFiles().map((file) => [file.path, file] as const))('%s is small, has its words, and no style that the content policy forbids', (_path, { svg, alt }) => {
  expect(gzipSync(svg, { level: 9 }).length).toBeLessThan(4096);
  expect(svg).toContain('<title>');
  expect(svg).not.toMatch(/ style=|<script|href=/);
  expect(svg).not.toMatch(/NaN|undefined/);
  expect(alt.length).toBeGreaterThan(30);
});

// The smallest letters are 11 px on a phone 320 px wide, whose column is 288 px: 13 units of 320.
test('letters are 13 units of 320 high, nowhere less', () => {
  for (const style of [FILE_STYLE, PAGE_STYLE]) {
    const sizes = [...style.matchAll(/font:(\d+)px/g)].map(([, size]) => Number(size));
    expect(sizes.length).toBeGreaterThan(0);
    for (const size of sizes) expect((size * 288) / 320).toBeGreaterThanOrEqual(11);
  }
});

// Letters of the system's typeface are about 0.55 of their height wide on average (recalled); labels end within the drawing.
test.each(named)('%s: labels fit', (_name, { scene }) => {
  for (const mark of [...(scene.below ?? []), ...(scene.above ?? [])]) {
    if (mark.mark !== 'label') continue;
    const width = mark.text.length * 13 * 0.56;
    const from = mark.anchor === 'end' ? mark.at[0] - width : mark.at[0];
    expect(from, mark.text).toBeGreaterThan(4);
    expect(from + width, mark.text).toBeLessThan(318);
  }
});

test('what is wrong says so in words and by a cross, and what is right never does', () => {
  for (const { frame, method, scene, alt } of everyDrawing) {
    const svg = inlineSvg(scene, alt);
    expect(/wrong: /.test(svg), `${method} ${frame}`).toBe(frame === 'wrong');
    expect(svg.includes('class="bad"'), `${method} ${frame}`).toBe(frame === 'wrong');
  }
});

test('text alternatives and captions are plain: no sentence above 28 words', () => {
  for (const { alt, caption, method, frame } of everyDrawing) {
    for (const sentence of `${alt} ${caption}`.split(/(?<=[.!?])\s+/)) expect(sentence.split(/\s+/).length, `${method} ${frame}: ${sentence}`).toBeLessThanOrEqual(28);
    expect(`${alt}${caption}`).not.toMatch(/\u2014/);
  }
});

test('paths of files are unique and name method and frame', () => {
  const paths = drawingFiles().map(({ path }) => path);
  expect(new Set(paths).size).toBe(paths.length);
  for (const path of paths) expect(path).toMatch(/^drawings\/(?:[a-z-]+\/(?:right|wrong|step-\d)|(?:eyes|lessons)\/[a-z-]+)\.svg$/);
});

// DESIGN: blue #0072b2, vermillion #d55e00 and ink; the rest are tints of ink and blue on paper, kept in one place.
test('a drawing brings no colour of its own: its classes do', () => {
  for (const { svg } of drawingFiles()) expect(svg.replace(/<style>.*<\/style>/, '')).not.toMatch(/#[0-9a-f]{3,6}|rgb|fill=|stroke="/i);
  expect(FILE_STYLE).toContain('#0072b2');
  expect(FILE_STYLE).toContain('#d55e00');
});

test('every kind of eye on record is drawn', () => {
  const kinds = new Set(records.flatMap(({ record }) => record.eyes as string[]));
  expect(new Set(drawingFiles().flatMap(({ path }) => /eyes\/([a-z-]+)\.svg/.exec(path)?.[1] ?? []))).toEqual(kinds);
});
