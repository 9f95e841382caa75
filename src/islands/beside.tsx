/** What a link sets beside a comparison: the reader's own tests, as long as the rig is the one that was pulled, and a fall. */
import { render } from 'preact';
import { ownAnswer } from '../break-tests/own-answer.ts';
import { axisFrame } from '../components/comparator/axis-frame.ts';
import { FallBesideRows } from '../components/comparator/fall-beside.tsx';
import { OwnTestsRow, pulledWords } from '../components/comparator/own-tests.tsx';
import type { Setup } from '../components/comparator/setup.ts';
import { demandDots, demandOfRange } from '../falls/demand.ts';
import { parseFallBeside } from '../links/fall-beside-link.ts';
import { type OwnTests, parseOwnTests } from '../links/own-tests-link.ts';
import { normalCdf } from '../numerics/normal.ts';
import type { Comparison, Evidence } from '../strength/types.ts';
import type { ForceUnit } from '../links/rig-keys.ts';

/** What the results tell when they have shown a comparison. */
export interface ShownComparison { state: { comparison: Comparison; unit: ForceUnit; older: { d: string | null; m: number | null } | null }; props: { setup: Setup; evidence: Evidence } }

/** Bearings this near count as one, mm. */
const SAME_BEARING_MM = 0.5;

/** Scatter of the class of the method's textile; of several the widest. */
function classOf({ methods, factors, classes }: Evidence, method: string): { cv: number; words: string } {
  const ids = (methods[method]?.links ?? []).filter(({ part }) => part !== 'device').flatMap((link) => link.factors.map((factor) => factors[factor]?.class)).filter((id) => id !== undefined);
  const named = ids.length > 0 ? ids : Object.keys(classes).filter((id) => id !== 'device');
  const [widest = ''] = [...named].sort((a, b) => (classes[b]?.cv ?? 0) - (classes[a]?.cv ?? 0));
  return { cv: classes[widest]?.cv ?? 0, words: `the class ${widest.replaceAll('-', ' ')}` };
}

function differs({ sling, eye, bearingMm }: OwnTests, { rig, bearing }: Comparison): boolean {
  return rig.sling !== sling || rig.eye !== eye || rig.slingState !== 'new' || (bearingMm !== null && Math.abs(bearing.mm - bearingMm) > SAME_BEARING_MM) || (bearingMm === null && bearing.measured);
}

/** The part of the page for a key of the link, shown where the link has it. */
function partFor(key: string, id: string): { root: HTMLElement; asked: string[] } | null {
  const root = document.getElementById(id);
  const asked = new URLSearchParams(location.search).getAll(key);
  if (root) root.hidden = asked.length === 0;
  return root && asked.length > 0 ? { root, asked } : null;
}

/** A line above the table that leads to a part below it; once. */
function announce(id: string, words: string): void {
  if (document.getElementById(`${id}-note`)) return;
  const note = document.createElement('p');
  note.id = `${id}-note`;
  render(<a href={`#${id}`}>{words}</a>, note);
  document.getElementById('results-root')?.before(note);
}

function showFall({ state: { comparison, unit }, props: { setup, evidence } }: ShownComparison): void {
  const part = partFor('f', 'fall-root');
  if (!part) return;
  const { root, asked } = part;
  const read = asked.length > 1 ? { why: 'a fall twice; none is used' } : parseFallBeside(asked[0] as string);
  let content = <></>;
  if ('why' in read) content = <p>Not understood in this link, and not used: <code data-input>f={asked.join(', ')}</code> <span data-input>({read.why})</span></p>;
  else {
    const { lowKn, highKn } = read.fall;
    const demand = demandOfRange(lowKn, highKn);
    // The load exceeds each of twenty equally likely strengths with its own chance.
    const exceeds = (dots: readonly number[]): number => dots.reduce((sum, kn) => sum + normalCdf((demand.muLog - Math.log(kn)) / demand.sigmaLog), 0) / dots.length;
    content = <FallBesideRows fall={read.fall} loads={demandDots(demand)} exceeds={exceeds} comparison={comparison} frame={axisFrame(setup, evidence, comparison, unit)} />;
  }
  render(<><h2 id="fall">A fall beside the rating</h2>{content}</>, root);
  announce('fall', 'A fall stands below the table');
}

/** Draws both parts anew. */
export function showBeside(shown: ShownComparison): void {
  showOwnTests(shown);
  showFall(shown);
}

function showOwnTests({ state: { comparison, unit }, props: { setup, evidence } }: ShownComparison): void {
  const part = partFor('t', 'own-root');
  if (!part) return;
  const { root, asked } = part;
  const read = asked.length > 1 ? { why: 'own tests twice; none is used' } : parseOwnTests(asked[0] as string, { methods: Object.keys(evidence.methods), slings: Object.keys(evidence.slings) });
  const content = () => {
    if ('why' in read) return <p>Not understood in this link, and not used: <code data-input>t={asked.join(', ')}</code> <span data-input>({read.why})</span></p>;
    const { tests } = read;
    if (differs(tests, comparison)) return <p>They were of another rig, and say nothing of this one: <span data-input>{pulledWords(tests, evidence)}</span>, new.</p>;
    const { cv, words } = classOf(evidence, tests.method);
    const answer = ownAnswer({ name: 'your tests', brokenKn: tests.broken, atLeastKn: tests.atLeast, oneLot: tests.oneLot }, cv, tests.oneRig ? setup.rigToRig.sd : 0);
    return <OwnTestsRow tests={tests} answer={answer} comparison={comparison} frame={axisFrame(setup, evidence, comparison, unit)} classWords={words} rigToRig={setup.rigToRig} />;
  };
  render(<><h2 id="own">Your tests</h2>{content()}</>, root);
  announce('own', 'Your tests stand below the table');
}
