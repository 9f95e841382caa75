/** What the rules of retirement say of the new sling from the day it was made, and of the old one as the reader described it. */
import { judge, type Judgement, type JudgedSling } from '../../retirement/judge.ts';
import { countedUnknown, verdictWords } from '../../retirement/verdict-words.ts';
import type { Comparison, Evidence } from '../../strength/types.ts';
import type { Frame } from './setup.ts';
import { FigureLink } from './working.tsx';

interface OfSlingProps { name: string; judged: Judgement[]; after?: string; sling: JudgedSling; rules: Evidence['rules']; frame: Frame }

/** One sling: the strictest verdict with its reason, then the other reasons in their order, each with its figures. */
function OfSling({ name, judged, after, sling, rules, frame }: OfSlingProps) {
  const [strictest] = judged;
  // Once it has to go, later limits say nothing.
  const said = strictest?.due && strictest.verdict === 'retire' ? judged.filter(({ due }) => due) : judged;
  const [first, ...others] = said.map((one) => {
    const rule = rules[one.rule] as Evidence['rules'][string];
    const unknown = after && countedUnknown(rule, sling);
    return (
      <>
        {one === strictest ? <b>{verdictWords(one, after)}</b> : verdictWords(one, after)}{unknown && `, as ${unknown}`}. {rule.says}
        {' '}({rule.figures.map((id, i) => [i > 0 && '; ', <FigureLink key={id} id={id} frame={frame} isShort />])})
      </>
    );
  });
  return first ? (
    <>
      <p><b>{name}:</b> {first}</p>
      <ul>{others.map((one, i) => <li key={i}>{one}</li>)}</ul>
    </>
  ) : null;
}

/** What is known of the old sling, as a link of the verdict reads it. Its age is no date of manufacture, so that is asked there. */
const verdictQuery = ({ material, use, light }: JudgedSling): string =>
  `?v=1&material=${material ?? 'unknown'}&use=${use ?? 'unknown'}&yes=${light === 'sun' ? 'light' : 'none'}&no=${light === 'dark' ? 'light' : 'none'}`;

/** The lines at the foot of the results; nothing where there is no rule. */
export function RetirementLine({ evidence, comparison, frame }: { evidence: Pick<Evidence, 'rules' | 'slings'>; comparison: Comparison; frame: Frame }) {
  const { rules } = evidence;
  const { sling, old } = comparison.rig;
  const fresh: JudgedSling = { material: (sling && evidence.slings[sling]?.material) || null, ageYears: 0, use: 'seldom', light: null };
  // Of a sling that nobody has used yet only limits are said: its use is still to come, and counts as little; light is not held against it.
  const limits = fresh.material ? judge(rules, fresh).filter(({ yearsLeft }) => yearsLeft !== null) : [];
  const judged = old ? judge(rules, old) : [];
  const shared = { rules, frame };
  return limits.length + judged.length > 0 ? (
    <div class="retirement" id="retirement" data-working="retirement">
      {old && <OfSling name="Old sling" judged={judged} after=" from now" sling={old} {...shared} />}
      <OfSling name="This sling, from its date of manufacture" judged={limits} sling={fresh} {...shared} />
      {limits.length > 0 && <p>Daily use, sun, a fall, or what an inspection finds can end it sooner.</p>}
      <p>
        <a href={`${frame.base}retire/${old ? verdictQuery(old) : ''}`}>Has it to go?</a>{' '}
        <a href={`${frame.base}replace/`}>Who can replace the sling</a>
      </p>
    </div>
  ) : null;
}
