/** The verdict on a sling as a view: what has to be done, every reason, what would change it. Drawn in the browser, where the answers are. */
import type { ComponentChildren } from 'preact';
import type { NotUnderstood } from '../../links/pieces.ts';
import { MAKER_RULES, compareHeadlines, type Headline, type Reason, type SlingHistory, type Verdict } from '../../retirement/verdict.ts';
import { ageOn, compareAddress, costAddress } from './next-steps.ts';
import type { VerdictSetup } from './setup.ts';
import { dayWords, fieldWords, headlineWords } from './words.ts';

export interface VerdictProps {
  setup: VerdictSetup;
  history: SlingHistory;
  verdict: Verdict;
  /** Day of asking, and what is to be said of it. */
  on: string;
  /** What the same answers said on the day of the link; null where that day is today. */
  then: { on: string; verdict: Verdict; isOtherEvidence: boolean } | null;
  /** Limits of the maker that were written and could not be read. */
  unread: readonly string[];
}

const MAKER_WORDS: Readonly<Record<string, string>> = {
  [MAKER_RULES[0]]: 'The day that the maker prints',
  [MAKER_RULES[1]]: 'The longest life from manufacture that the maker prints',
  [MAKER_RULES[2]]: 'The longest life from first use that the maker prints',
};

/** A day as a `<time>`. */
export const Day = ({ day }: { day: string }) => <time dateTime={day}>{dayWords(day)}</time>;

/** What has to be done, with its day. */
export function HeadlineView({ of, on }: { of: Headline; on: string }) {
  const { says, day } = headlineWords(of, on);
  return <b>{says}{day && [' ', <Day key="day" day={day} />]}</b>;
}

const listed = (texts: readonly string[]): string => (texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`);

/** One reason: what it asks, the rule's name, why, and where its figures stand. */
function ReasonView({ reason, setup, on }: { reason: Reason; setup: VerdictSetup; on: string }) {
  const rule = setup.rules[reason.rule];
  const isOver = reason.day !== null && reason.day < on;
  return (
    <li>
      <HeadlineView of={reason.asks} on={on} />. {rule?.what ?? MAKER_WORDS[reason.rule]}
      {isOver && [' (due on ', <Day key="day" day={reason.day as string} />, ')']}.{' '}
      {rule ? <>{reason.unknown.length === 0 && `${rule.says} `}<a href={`#rule-${reason.rule}`}>Sources</a></> : 'The maker decides, whatever else is said here.'}
      {reason.unknown.length > 0 && <span class="soft"> Not known: {listed(reason.unknown.map(fieldWords))}.</span>}
    </li>
  );
}

/** The line under each group of questions. */
export function SoFar({ verdict, on, base }: { verdict: Verdict | null; on: string; base: string }): ComponentChildren {
  if (!verdict) return null;
  const { strictest, milder } = verdict;
  if (milder) return <>At best: <HeadlineView of={milder.verdict} on={on} />. As it stands, with what is open counted against it: <HeadlineView of={strictest} on={on} />.</>;
  const now = <HeadlineView of={strictest} on={on} />;
  if (strictest.kind !== 'retire-now') return <>So far: {now}.</>;
  return <>{now}. No other answer makes that milder. <a href={`${base}replace/`}>Who can replace it</a></>;
}

/** Published breaks of used slings of the same material and age; no figure where there is none. */
function Used({ setup, history, on }: Pick<VerdictProps, 'setup' | 'history' | 'on'>) {
  const { material, made } = history;
  const age = made === null ? null : ageOn(made, on);
  const same = age === null ? [] : setup.used.filter(({ material: fibre, years }) => fibre === material && age >= years.from && age <= years.to);
  return (
    <>
      <h3>What used slings of this kind broke at</h3>
      {same.length > 0
        ? <ul>{same.map(({ id, words, says }) => {
          const [record, cell] = id.split('#');
          return <li key={id}><a href={`${setup.base}figures/${record}/${cell ? `#${cell}` : ''}`}>{words}</a> <span class="soft">{says}</span></li>;
        })}</ul>
        : <p>{material === null || made === null ? 'Say its material and when it was made, and published breaks of such slings stand here.' : 'We found no breaks of used slings of this material and age. So no strength is given.'}</p>}
      {same.length > 0 && <p>They are other slings than yours. No figure says what yours would break at.</p>}
    </>
  );
}

/** The whole verdict. */
export function VerdictView({ setup, history, verdict, on, then, unread }: VerdictProps) {
  const { strictest, reasons, milder } = verdict;
  const met = reasons.filter(({ why }) => why === 'met');
  const open = reasons.filter(({ why }) => why !== 'met');
  const isOpenStrictest = !met[0] || compareHeadlines(met[0].asks, strictest) > 0;
  return (
    <>
      {then && (
        <p class="then">
          When this link was made, on <Day day={then.on} />: <HeadlineView of={then.verdict.strictest} on={then.on} />.
          {then.isOtherEvidence && ' That is worked out with the rules of today; they may have changed since.'} Today:
        </p>
      )}
      <p class="headline"><HeadlineView of={strictest} on={on} /></p>
      <p>
        Judged on <Day day={on} />.{' '}
        {isOpenStrictest && 'This rests on what is open or not known: it counts against the sling.'}
        {milder && <> At best, once all is known, it would be: <HeadlineView of={milder.verdict} on={on} />.</>}
      </p>
      {unread.length > 0 && <p class="fault">Written but not readable, so not in this verdict: {listed(unread)}.</p>}
      {met.length > 0 && <><h3>What your answers say, strictest first</h3><ul>{met.map((reason) => <ReasonView key={reason.rule} reason={reason} setup={setup} on={on} />)}</ul></>}
      {open.length > 0 && (
        <details class="open-reasons" open={isOpenStrictest}>
          <summary>Counted against it, because an answer is open or not known ({open.length})</summary>
          <ul>{open.map((reason) => <ReasonView key={reason.rule} reason={reason} setup={setup} on={on} />)}</ul>
        </details>
      )}
      <h3>What would change it</h3>
      {milder
        ? <p>To bring it to <HeadlineView of={milder.verdict} on={on} />, all of these must be known, and speak for the sling: {listed(milder.fields.map(fieldWords))}.</p>
        : <p>No answer to an open question makes it milder. A stricter one can come from the next inspection, from the maker, or from anything that happens to it.</p>}
      <h3>Next</h3>
      <ul class="next-steps">
        <li><a href={`${setup.base}replace/`}>Who can replace the sling</a>: the maker, a workshop, or a new device.</li>
        <li><a href={costAddress(strictest, setup)}>What each way costs</a>, each, in all and a year.</li>
        <li>If they refuse: <a href={compareAddress(history, on, setup)}>compare ways to attach a new sling</a>, with this one filled in.</li>
        <li>More than one device: <a href={`${setup.base}rack/`}>keep a register of the rack</a>.</li>
      </ul>
      <Used setup={setup} history={history} on={on} />
    </>
  );
}

/** What of a link was not used, word for word. */
export function NotUsed({ pieces }: { pieces: readonly NotUnderstood[] }) {
  return (
    <>
      <p><b>Not used from the link.</b> It counts as not known:</p>
      <ul>{pieces.map(({ piece, why }, at) => <li key={at} data-input><code>{piece}</code>: {why}</li>)}</ul>
    </>
  );
}
