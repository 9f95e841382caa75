/** Shows the own tests of a link beside the comparison, as long as the rig is the one that was pulled. */
import { render } from 'preact';
import { ownAnswer } from '../break-tests/own-answer.ts';
import { axisFrame } from '../components/comparator/axis-frame.ts';
import { OwnTestsRow, pulledWords } from '../components/comparator/own-tests.tsx';
import type { Setup } from '../components/comparator/setup.ts';
import { type OwnTests, parseOwnTests } from '../links/own-tests-link.ts';
import type { Comparison, Evidence } from '../strength/types.ts';
import type { ForceUnit } from '../links/rig-keys.ts';

/** What the results tell when they have shown a comparison. */
export interface ShownComparison { state: { comparison: Comparison; unit: ForceUnit }; props: { setup: Setup; evidence: Evidence } }

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

/** Draws the section anew. */
export function showOwnTests({ state: { comparison, unit }, props: { setup, evidence } }: ShownComparison): void {
  const root = document.getElementById('own-root');
  if (!root) return;
  const asked = new URLSearchParams(location.search).getAll('t');
  root.hidden = asked.length === 0;
  if (asked.length === 0) return;
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
  if (document.getElementById('own-note')) return;
  const note = document.createElement('p');
  note.id = 'own-note';
  render(<a href="#own">Your tests stand below the table</a>, note);
  document.getElementById('results-root')?.before(note);
}
