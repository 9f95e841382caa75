/** One record of each kind with every field filled in, and alternatives where a field may be of two kinds. Names and numbers are invented. */

type Fields = Record<string, unknown>;

const rig: Fields = {
  method: 'girth-hitch',
  form: 'sewn-loop',
  material: 'hmpe',
  widthMm: 10,
  diameterMm: 6,
  bearing: 'pin',
  bearingMm: 5,
  legs: 2,
  state: 'new',
  pull: 'slow',
  ageYears: { from: 1, to: 3 },
  note: 'as told',
};
const pulled: Fields = {
  on: '2026-01-05',
  machine: 'a ram',
  rateMmPerMin: 100,
  loadCell: { capacityKn: 50, calibrated: '2025-12-01' },
  samplesPerSecond: 500,
  conditioning: 'a day',
  oneLot: true,
  rigs: 'one for each pull',
};
const figure: Fields = {
  what: 'Breaking force',
  kind: 'measured',
  value: 12.5,
  unit: 'kN',
  of: 'lab-a/straight',
  rig,
  study: 'lab-a',
  standing: 'derived',
  locator: 'table 1',
  checked: '2026-01-05',
  lowered: [{ by: 'few', steps: 1, why: 'few pulls' }],
  asPrinted: '12.5',
  why: 'as told',
  derived: { formula: 'a * 2', inputs: { a: 'lab-a/straight' } },
  note: 'as told',
};
const without = (fields: Fields, ...keys: string[]): Fields =>
  Object.fromEntries(Object.entries(fields).filter(([key]) => !keys.includes(key)));
const common = without(figure, 'value');

export interface Shape {
  /** Name of the schema in the list of constraints. */
  name: string;
  file: string;
  record: Fields;
}

const at = (name: string, file: string, ...records: Fields[]): Shape[] =>
  records.map((record) => ({ name, file, record }));
const values = (form: string, value: Fields): Shape => ({
  name: `value ${form}`,
  file: 'data/figures/lab-a/x.yaml',
  record: { ...figure, value },
});

export const SHAPES: readonly Shape[] = [
  ...at('figure', 'data/figures/lab-a/x.yaml', figure, { ...figure, of: 'unknotted', rig: { ...rig, ageYears: 4 } }),
  ...at('table', 'data/figures/lab-a/x.yaml', {
    ...common,
    cells: {
      'a-1': {
        value: 12.5,
        unit: 'kN',
        of: 'unknotted',
        rig,
        asPrinted: '12.5',
        study: 'lab-a',
        note: 'as told',
        lowered: [{ by: 'few', steps: 2, why: 'few pulls' }],
      },
    },
  }),
  ...at('moved', 'data/figures/lab-a/x.yaml', {
    kind: 'moved',
    to: 'lab-a/straight',
    on: '2026-01-05',
    why: 'renamed',
  }),
  ...at('split', 'data/figures/lab-a/x.yaml', {
    kind: 'split',
    to: ['lab-a/straight', 'lab-a/knot'],
    on: '2026-01-05',
    why: 'two results',
  }),
  ...at('withdrawn', 'data/figures/lab-a/x.yaml', {
    kind: 'withdrawn',
    on: '2026-01-05',
    why: 'The load cell was out of order.',
    was: 'breaking force of a knotted sling',
  }),
  values('tests', { tests: [11.5, 12.5], censored: [10] }),
  values('mean', { mean: 12.5, sd: 1, cv: 0.08, n: 5 }),
  values('low', { low: 10, high: 12, kind: 'extremes of n', n: 5 }),
  values('atLeast', { atLeast: 22, n: 3 }),
  values('atMost', { atMost: 22, n: 3 }),
  values('statement', { statement: 'the knot slipped' }),
  ...at('source', 'data/sources/x.yaml', {
    type: 'report',
    title: 'Slings',
    authors: ['A. Tester'],
    publisher: 'Club',
    container: 'Journal',
    number: '1',
    edition: '2',
    issued: '2020-01',
    language: 'en',
    url: 'https://example.org/a',
    doi: '10.1000/1',
    free: true,
    informal: 'one bench',
    checked: '2026-01-05',
    note: 'as told',
  }),
  ...at('factor', 'data/factors/x.yaml', {
    what: 'Straight strength',
    acts: { multiplies: 'straight' },
    class: 'sewn',
    applies: {
      riggings: ['straight'],
      materials: ['hmpe'],
      forms: ['sewn-loop'],
      widthMm: [8, 12],
      bearings: ['pin'],
      legs: 2,
    },
    along: 'bearingMm',
    from: ['lab-a/straight'],
    leftOut: [{ figure: 'lab-a/knot', why: 'a knot' }],
    taken: [{ figure: 'lab-a/straight', bearingMm: 10, diameterMm: 6, why: 'as its fixtures have it' }],
    times: { by: 2, spread: 0.1, why: 'two loops' },
    bridge: { widthMm: [6, 14], spread: 0.2, bySection: true, why: 'no other width' },
    assumed: { low: 1, high: 2, why: 'as told' },
    floor: 'lab-b/floor',
  }),
  ...at(
    'class',
    'data/factors/class/x.yaml',
    {
      what: 'Sewn',
      cv: { from: ['lab-a/straight'], note: 'pooled' },
      ceiling: { cv: 0.2, why: 'as told' },
      tau: { groups: [['lab-a/straight', 'lab-b/table#wide']], note: 'two' },
    },
    {
      what: 'Sewn',
      cv: { assumed: 0.1, why: 'as told' },
      ceiling: { cv: 0.2, why: 'as told' },
      tau: {
        groups: [
          [
            { figure: 'lab-a/knot', over: 'lab-a/straight' },
            { figure: 'lab-b/table#wide', over: 'lab-b/table#narrow' },
          ],
        ],
      },
    },
    {
      what: 'Sewn',
      cv: { assumed: 0.1, why: 'as told' },
      ceiling: { cv: 0.2, why: 'as told' },
      tau: { borrowed: 'sewn', why: 'near' },
    },
    {
      what: 'Sewn',
      cv: { assumed: 0.1, why: 'as told' },
      ceiling: { cv: 0.2, why: 'as told' },
      tau: { assumed: 0.1, why: 'as told' },
    },
  ),
  ...at('method', 'data/methods/x.yaml', {
    name: 'basket',
    order: 1,
    role: 'home',
    summary: 'Through the eye.',
    takes: ['sewn-loop'],
    eyes: ['bare-wire'],
    links: [{ name: 'sling', part: 'sling', at: 'eye', legs: 4, factors: ['straight'] }],
    length: { words: 'half', share: 0.5, lessWidths: 20, why: 'as told' },
    bulk: 'Two strands.',
    riggings: ['basket'],
    oneClipError: { what: 'One end.', releases: true },
    closed: { possible: true, why: 'Threaded.' },
    apart: [
      {
        why: 'thin',
        when: { eyes: ['bare-wire'], materials: ['hmpe'] },
        widthMm: [8, 12],
        figures: ['lab-a/straight'],
        published: ['lab-a/straight'],
      },
    ],
    shown: ['lab-a/straight'],
  }),
  ...at('sling', 'data/slings/x.yaml', {
    name: 'HMPE',
    order: 1,
    form: 'sewn-loop',
    material: 'hmpe',
    widthMm: 10,
    lengthsCm: [60],
    floor: 'lab-b/floor',
    note: 'as told',
  }),
  ...at('gap', 'data/gaps/x.yaml', {
    question: 'How strong?',
    blocks: [{ methods: ['basket'], slings: ['hmpe-10'], eyes: ['bare-wire'], belowMm: 3.5, aboveMm: 2, used: true }],
    concerns: ['basket'],
    page: 'falls',
    nearest: ['lab-a/straight'],
    test: { rig: 'a sling', pulls: 10, vary: 'width', record: 'force' },
  }),
  ...at('replacement', 'data/replacements/x.yaml', {
    name: 'maker',
    order: 1,
    who: 'The maker.',
    keeps: 'the approval',
    only: 'maker-and-workshop-refused',
    refuses: 'old ones',
    ask: ['How long?'],
    packing: ['Wash and dry it.'],
    figures: ['lab-b/floor'],
  }),
  ...at('law', 'data/law/x.yaml', {
    region: 'eu',
    covers: 'The Union.',
    sentences: [{ says: 'Altered is new.', figures: ['lab-b/floor'], checked: '2026-01-05' }],
  }),
  ...at('material', 'data/materials/x.yaml', {
    name: 'HMPE',
    order: 1,
    family: 'fibre',
    summary: 'Strong and slippery.',
    materials: ['hmpe'],
    topics: Object.fromEntries(
      ['knots', 'bearings', 'wet', 'hot', 'light', 'chemicals', 'age', 'repeated'].map((topic) => [
        topic,
        { figures: ['lab-a/straight'], gaps: ['basket-on-thin-wire'], none: 'No more.' },
      ]),
    ),
  }),
  ...at('rule', 'data/rules/x.yaml', {
    what: 'Age',
    order: 1,
    verdict: 'retire',
    when: { materials: ['hmpe'], uses: ['weekly', 'daily'], widthMm: [8, 10], exposures: ['light'], events: ['edge'], findings: ['cut'] },
    due: { figure: 'lab-b/lifetime', reads: 'value', from: 'first-use' },
    says: 'It is old.',
    figures: ['lab-b/floor'],
  }),
  ...at(
    'correction',
    'data/corrections/x.yaml',
    {
      figure: 'lab-b/floor',
      printed: '2.20 kN',
      used: 22,
      reason: 'The point slipped.',
      reported: 'to the laboratory, in January',
      status: 'reported',
      on: '2026-01-05',
      expect: { printed: '2.20 kN' },
    },
    {
      figure: 'lab-b/floor',
      printed: 'kg',
      used: 'kN',
      reason: 'The unit slipped.',
      status: 'open',
      on: '2026-01-05',
      expect: { printed: '22' },
    },
  ),
  ...at('series of a figure', 'data/series/x.yaml', {
    what: 'Slings',
    called: 'the sling',
    part: 'the sling',
    figure: 'lab-a/straight',
    pulled,
    beside: [{ series: 'y', why: 'as told' }],
    note: 'as told',
  }),
  ...at('series by itself', 'data/series/x.yaml', {
    what: 'Slings',
    called: 'the sling',
    part: 'the sling',
    standing: 'read',
    source: 'lab-a',
    locator: 'page 1',
    checked: '2026-01-05',
    rig,
    pulled,
    lowered: [{ by: 'few', steps: 1, why: 'few pulls' }],
    beside: [{ series: 'y', why: 'as told' }],
    note: 'as told',
  }),
];

type Path = readonly (string | number)[];

/** Writes a record as YAML, one field or entry a line, and tells where each key and value stands. Independent of the reader under test. */
export function written(record: Fields): { text: string; keyAt(path: Path): string; valueAt(path: Path): string } {
  const lines: string[] = [];
  const keys = new Map<string, string>();
  const spots = new Map<string, string>();
  const name = (path: Path) => path.join('\n');
  block(record, [], 0);
  spots.set('', '1:1');
  return {
    text: `${lines.join('\n')}\n`,
    keyAt: (path) => keys.get(name(path)) ?? 'no key',
    valueAt: (path) => spots.get(name(path)) ?? 'no value',
  };

  function block(value: object, path: Path, indent: number): void {
    for (const [key, part] of Object.entries(value)) {
      const own = [...path, Array.isArray(value) ? Number(key) : key];
      const head = `${' '.repeat(indent)}${Array.isArray(value) ? '- ' : `${/^[\w.-]+$/.test(key) ? key : JSON.stringify(key)}: `}`;
      const line = lines.length + 1;
      keys.set(name(own), `${line}:${indent + 1}`);
      const group = typeof part === 'object' && part !== null;
      if (Array.isArray(value)) keys.set(name(own), `${line}:${indent + 3}`);
      if (!group || Object.keys(part).length === 0) {
        spots.set(name(own), `${line}:${head.length + 1}`);
        lines.push(head + JSON.stringify(part));
        continue;
      }
      // A group starts on the next line: that is where its value stands.
      lines.push(head.trimEnd());
      spots.set(name(own), `${line + 1}:${indent + 3}`);
      block(part, own, indent + 2);
    }
  }
}
