/** A tiny project that has no fault, as a map of files, and the means to break it in one place. */
import { JOINED_RULES } from '../../src/build/record-rules/joined-rules.ts';
import { checkProject } from '../../src/records/check-project.ts';
import { formatFault } from '../../src/records/fault.ts';
import type { FileMap } from '../../src/records/files.ts';

/** Files of the tiny project that tests change most; the last is not there. */
export const STRAIGHT = 'data/figures/lab-a/straight.yaml';
export const KNOT = 'data/figures/lab-a/knot.yaml';
export const TABLE = 'data/figures/lab-b/table.yaml';
export const FLOOR = 'data/figures/lab-b/floor.yaml';
export const FACTOR = 'data/factors/straight.yaml';
export const KNOT_FACTOR = 'data/factors/knot.yaml';
export const CLASS = 'data/factors/class/sewn.yaml';
export const RULE = 'data/rules/age.yaml';
export const BASKET = 'content/methods/basket.mdx';
export const NEW = 'data/figures/lab-a/new.yaml';

/** All numbers and names here are invented; the check looks at their form alone. */
export const SOUND: FileMap = {
  'data/sources/lab-a.yaml': `type: report
title: Slings on wires
authors: [A. Tester]
issued: "2020"
language: en
free: true
checked: "2026-01-05"
`,
  'data/sources/lab-b.yaml': `type: report
title: More slings on wires
authors: [B. Tester]
issued: unknown
language: en
free: false
checked: "2026-01-05"
`,
  [STRAIGHT]: `what: Sewn slings, straight
kind: measured
value: { tests: [22.5, 23.5, 24.1] }
unit: kN
rig: { method: straight, form: sewn-loop, material: hmpe, widthMm: 10 }
standing: read
locator: table 1
checked: "2026-01-05"
lowered: [{ by: few, why: "3 pulls" }]
`,
  [KNOT]: `what: Sewn slings with a knot
kind: measured
value: { mean: 60, sd: 3, n: 5 }
unit: percent
of: lab-a/straight
rig: { method: overhand, form: sewn-loop, material: hmpe, widthMm: 10 }
standing: read
locator: table 2
checked: "2026-01-05"
lowered: [{ by: few, why: "5 pulls" }]
`,
  'data/figures/lab-a/knot-force.yaml': `what: Sewn slings with a knot, breaking force
kind: measured
value: { tests: [13.8, 14.1, 14.4] }
unit: kN
rig: { form: sewn-loop, material: hmpe }
standing: read
locator: table 3
checked: "2026-01-05"
lowered: [{ by: few, why: "3 pulls" }]
`,
  [TABLE]: `what: Sewn slings, straight
kind: measured
unit: kN
rig: { form: sewn-loop, material: hmpe }
standing: quoted
locator: page 3
checked: "2026-01-05"
lowered: [{ by: few, why: "2 pulls each" }]
cells:
  wide: { value: { mean: 23.3, n: 2 }, rig: { method: straight, widthMm: 11 } }
  narrow: { value: { mean: 22.4, n: 2 }, rig: { method: straight, widthMm: 8 } }
`,
  [FLOOR]: `what: Least strength of a new sling
kind: required
value: 22
unit: kN
standing: read
locator: clause 4
checked: "2026-01-05"
`,
  'data/figures/lab-b/lifetime.yaml': `what: Years from manufacture at which a sling is replaced
kind: rule
value: 10
unit: years
standing: read
locator: clause 7
checked: "2026-01-05"
`,
  [FACTOR]: `what: New sewn sling, straight
acts: loop
class: sewn
applies: { riggings: [straight], materials: [hmpe], forms: [sewn-loop], widthMm: [9, 12] }
from: [lab-a/straight, lab-b/table#wide]
floor: lab-b/floor
`,
  [KNOT_FACTOR]: `what: Overhand, share of the straight strength
acts: { multiplies: straight }
class: sewn
applies: { riggings: [overhand], materials: [hmpe], forms: [sewn-loop], widthMm: [9, 12] }
from: [lab-a/knot]
`,
  [CLASS]: `what: Sewn slings pulled straight
cv: { from: [lab-a/straight] }
ceiling: { cv: 0.12, why: invented }
tau: { groups: [[lab-a/straight, lab-b/table#wide]] }
`,
  'data/methods/basket.yaml': `name: basket
order: 1
role: home
summary: Through the eye, both ends to the connector.
takes: [sewn-loop]
eyes: [bare-wire]
links:
  - { name: sling over the eye, part: sling, at: eye, legs: 4, factors: [straight] }
length: { words: half the sling, share: 0.5 }
bulk: Two strands at the eye.
oneClipError: { what: Only one end is clipped., releases: true }
closed: { possible: true, why: It is threaded. }
`,
  'data/methods/makers-sling.yaml': `name: Maker's sling
order: 2
role: reference
summary: The sling that the device was tested with.
takes: [sewn-loop]
eyes: [bare-wire, sleeved-wire, wire-under-bar, metal-bar, twin-eye]
links:
  - { name: sling over the eye, part: sling, at: eye, legs: 2, factors: [straight] }
length: { words: as made }
bulk: One sling.
oneClipError: { what: One loop to clip., releases: false }
closed: { possible: false, why: It is sewn in place. }
`,
  'content/methods/makers-sling.mdx': `---
title: Maker's sling
---
As the maker made it.
`,
  [BASKET]: `---
title: Basket
---
Through the eye, both ends to the connector: <Fig id="lab-a/straight" />.
`,
  'data/slings/hmpe-10.yaml': `name: HMPE, ten millimetres
order: 1
form: sewn-loop
material: hmpe
widthMm: 10
lengthsCm: [30, 60]
floor: lab-b/floor
`,
  'data/gaps/basket-on-thin-wire.yaml': `question: How strong is a basket on another eye, or in a used sling?
blocks: [{ methods: [basket], slings: [hmpe-10], eyes: [sleeved-wire, wire-under-bar, metal-bar, twin-eye] }, { methods: [ basket ], used: true, eyes: [bare-wire] }]
nearest: [lab-a/straight]
test: { rig: a sling on a wire, pulls: 10, record: force }
`,
  'data/replacements/maker.yaml': `name: the maker
order: 1
who: The maker of the device.
keeps: the approval
ask: [How long will it take?]
figures: [lab-b/floor]
`,
  'data/law/eu.yaml': `region: eu
covers: The Union.
sentences:
  - says: Altered equipment is new equipment.
    figures: [lab-b/floor]
    checked: "2026-01-05"
`,
  'data/materials/hmpe.yaml': `name: HMPE
order: 1
family: fibre
summary: A strong and slippery fibre.
materials: [hmpe]
topics:
  knots: { figures: [lab-a/knot], gaps: [basket-on-thin-wire] }
  bearings: { figures: [], gaps: [basket-on-thin-wire] }
  wet: { figures: [], none: We found no test of a wet sling. }
  hot: { figures: [], none: We found no test of a hot sling. }
  light: { figures: [], none: We found no test of a sling in light. }
  chemicals: { figures: [], none: We found no test. }
  age: { figures: [lab-b/lifetime] }
  repeated: { figures: [], none: We found no test. }
`,
  'content/materials/hmpe.mdx': `---
title: HMPE
---
A knot: <Fig id="lab-a/knot" />.
`,
  [RULE]: `what: Slings go at the age that the laboratory prints
order: 1
verdict: retire
due: { figure: lab-b/lifetime, reads: value }
says: The laboratory replaces a sling at this age, whatever it looks like.
figures: [lab-b/lifetime]
`,
};

/** Takes the marks out of a text and gives the place of each: \u00a7 stands where a fault is expected. */
export function unmarked(text: string): { text: string; marks: { line: number; col: number }[] } {
  const marks: { line: number; col: number }[] = [];
  let line = 1;
  let col = 1;
  let plain = '';
  for (let i = 0; i < text.length; i++) {
    const unit = text[i] as string;
    if (unit === '\u00a7') marks.push({ line, col });
    else {
      plain += unit;
      col += 1;
      if (unit === '\n') {
        line += 1;
        col = 1;
      }
    }
  }
  return { text: plain, marks };
}

/** One broken place: a file that is new or edited, with marks, and what the check must say at each mark. */
export interface Fixture {
  /** A sentence for the test's title. */
  title: string;
  rule: string;
  /** Files over those of the sound project: a whole text, or replacements [from, to] in the sound text; null removes the file. */
  files: Record<string, string | readonly (readonly [string, string])[] | null>;
  /** In the order of file, line and column: what stands behind `file:line:col `. */
  says: readonly string[];
  /** Rules whose faults are a consequence of the same break and are not looked at here. */
  besides?: readonly string[];
}

/** Builds the broken project, with the positions that are marked, by file. */
export function broken(fixture: Pick<Fixture, 'files'>): { files: FileMap; marks: string[] } {
  const files: Record<string, string> = { ...SOUND };
  const marks: string[] = [];
  for (const [file, change] of Object.entries(fixture.files).sort(([a], [b]) => (a < b ? -1 : 1))) {
    if (change === null) {
      delete files[file];
      continue;
    }
    let text = typeof change === 'string' ? change : (SOUND[file] as string);
    if (typeof change !== 'string') {
      for (const [from, to] of change) {
        if (text.split(from).length !== 2) throw new RangeError(`"${from}" must stand once in ${file}`);
        text = text.replace(from, () => to);
      }
    }
    const plain = unmarked(text);
    files[file] = plain.text;
    for (const { line, col } of plain.marks) marks.push(`${file}:${line}:${col}`);
  }
  return { files, marks };
}

/**
 * The messages of a rule for a broken project, and those of other rules. The gaps are held against the engine only where
 * that rule is looked at: most broken records change what can be computed.
 */
export function messages(files: FileMap, rule: string): { own: string[]; other: string[] } {
  const faults = checkProject(files, JOINED_RULES.filter(({ name }) => name === rule || name !== 'gaps-agree'));
  return {
    own: faults.filter((fault) => fault.rule === rule).map(formatFault),
    other: faults.filter((fault) => fault.rule !== rule).map((fault) => `${fault.rule} ${formatFault(fault)}`),
  };
}
