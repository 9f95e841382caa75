/** What the calculator says: the cheapest plan, each way in the order in which it is to be asked, break-even, and what would change it. */
import type { ComponentChildren } from 'preact';
import type { NotUnderstood } from '../../links/pieces.ts';
import { type Change, type Choice, type CostAnswer, costCurves, MOST_TURNS, offersSideBySide, turnsAgainstNew, type WayCost } from '../../replacement/answer.ts';
import type { Turn } from '../../replacement/cost.ts';
import { type CostAsked, type Way, WAYS } from '../../replacement/read-words.ts';
import { CostChart, CostTable, cheapestSentence } from './cost-chart.tsx';
import { choiceWords, kindWords, listed, type Printer, WAY_NAMES, WAY_WORDS } from './words.ts';

/** A number of the reader's own, or made of such. */
const N = ({ children }: { children: ComponentChildren }) => <span class="num" data-input>{children}</span>;

interface Props { asked: CostAsked; answer: CostAnswer; printer: Printer; /** Folder that the site is served from. */ base: string }

/** Where a way and buying new change places, as a sentence. */
export function turnSentence(way: Way, turns: readonly Turn[], printer: Printer): string {
  const name = WAY_WORDS[way].replace(/^./, (letter) => letter.toUpperCase());
  const words = { first: 'cheaper than buying new', second: 'dearer than buying new', equal: 'at the same cost as buying new' } as const;
  const [first, ...rest] = turns;
  if (!first) return '';
  if (rest.length === 0) return `${name} is ${words[first.cheaper]} at every count up to ${printer.count(MOST_TURNS)}.`;
  return `${name} is ${words[first.cheaper]} for one device; ${rest.map(({ count, cheaper }) => `from ${printer.count(count)} on ${words[cheaper]}`).join('; ')}.`;
}

/** One way's row: the parts of its cost, or why it has none. */
function WayRow({ way, row, asked, answer, printer, isBest }: Props & { way: Way; row: WayCost | undefined; isBest: boolean }) {
  const { money, count } = printer;
  const isHomeShut = way === 'home' && !asked.kinds.some(({ isHomeOpen }) => isHomeOpen);
  const isWrong = Object.keys(asked.faults).some((id) => id.startsWith(`${way}-`));
  if (!row) {
    const why = isHomeShut ? 'closed: only where maker and workshop have both refused' : isWrong ? 'left out: a field is not readable'
      : !asked.offers[way] ? 'no price written' : 'refused all devices';
    return <tr><th scope="row">{WAY_NAMES[way]}</th><td colSpan={5} class="soft">{why}</td></tr>;
  }
  const parts = [`${money(row.work)} price`, ...(row.shipping > 0 ? [`${money(row.shipping)} post`] : []), ...(row.waiting > 0 ? [`${money(row.waiting)} waiting`] : [])];
  return (
    <tr class={isBest ? 'best' : undefined}>
      <th scope="row">{WAY_NAMES[way]}{row.count < answer.count && <span class="soft">, <N>{`${count(row.count)} of ${count(answer.count)}`}</N></span>}{isBest && <b class="tag">least cost</b>}</th>
      <td data-label="Each" class="amount" data-input>{money(row.each)}</td>
      <td data-label="In all" class="amount" data-input>{money(row.total)}</td>
      <td data-label="Made of" data-input>{parts.join(' + ')}</td>
      <td data-label="Lasts" data-input>{row.years === null ? 'not said' : `${count(row.years)} years`}</td>
      <td data-label="A year" class="amount" data-input>{row.yearly === null ? 'not known' : money(row.yearly)}</td>
    </tr>
  );
}

/** The row of keeping the sling: no price, and an end. */
function KeepRow({ retire, base }: { retire: string | null; base: string }) {
  return (
    <tr>
      <th scope="row">Keep and watch</th>
      <td colSpan={5}>
        {retire === 'now' ? <><b>Not open: the verdict was to retire the sling now.</b> </>
          : retire === null ? <>Costs nothing now, but never past <i>retire now</i>. </>
            : <>Costs nothing now, and ends on <time>{retire}</time> at the latest. </>}
        <a href={`${base}retire/`}>Has the sling to go?</a>
      </td>
    </tr>
  );
}

const INPUT_NAMES: Readonly<Record<Change['what'], string>> = { price: 'price each', shipping: 'post or delivery in all', weeks: 'weeks', week: 'what a week without one costs' };

/** One input that would change the answer. */
function ChangeRow({ change, printer }: { change: Change; printer: Printer }) {
  const { way, what, now, at, hasSteps, after } = change;
  const print = what === 'weeks' ? (n: number) => printer.count(Math.round(n * 10) / 10) : printer.money;
  return (
    <tr>
      <th scope="row">{way === null ? 'All ways' : WAY_NAMES[way]}: {INPUT_NAMES[what]}</th>
      <td data-label="Now" class="amount" data-input>{print(now)}</td>
      <td data-label="Turns at" class="amount" data-input>{hasSteps && what === 'price' ? `${at > now ? '+' : '−'} ${print(Math.abs(at - now))} on every price` : `${at > now ? 'above' : 'below'} ${print(at)}`}</td>
      <td data-label="Then least" data-input>{choiceWords(after, printer)}</td>
    </tr>
  );
}

/** At the decision: what a price does not say of a sling at home. */
function HomeWarning({ base }: { base: string }) {
  const [methods, comparison] = [`${base}methods/`, `${base}compare/`];
  return (
    <div class="warning" role="note" aria-label="Warning">
      <p class="signal"><svg viewBox="0 0 22 20" aria-hidden="true"><path fill-rule="evenodd" d="M11 0 22 20H0zM10 7v6h2V7zm0 8v2h2v-2z" /></svg>WARNING</p>
      <p><b>A sling attached at home ends the maker’s approval. It can come off or be cut.</b> Whoever hangs on it falls.</p>
      <p>Before its price, read <a href={methods}>the methods</a> and <a href={comparison}>the comparison</a>.</p>
    </div>
  );
}

const SHOWN_CHANGES = 6;

/** Whether a plan sends everything the one way. */
const isAll = (choice: Choice | null, way: Way): boolean => choice?.parts.length === 1 && choice.parts[0]?.way === way;

/** All results. */
export function CostResults(props: Props) {
  const { asked, answer, printer, base } = props;
  const { best, bestYearly, rows, stranded, changes, count } = answer;
  if (asked.isStopped) return <p>Nothing is worked out before the fields marked above can be read.</p>;
  if (count === 0) return <p>Write how many devices you have, and a price for two ways or more.</p>;
  const curves = costCurves(offersSideBySide(asked), count);
  const isSamePlan = best && bestYearly && choiceWords(best, printer) === choiceWords(bestYearly, printer);
  const turns = turnsAgainstNew(asked.offers);
  return (
    <>
      {stranded.length > 0 && rows.length > 0 && <p class="fault">No way with a price takes <N>{listed(stranded.map((kind) => kindWords(kind, printer)))}</N>. Write a price for one that does.</p>}
      {best && rows.length > 1 && (
        <>
          <p class="headline">Least cost now: <N>{choiceWords(best, printer)}</N>, <N>{printer.money(best.total)}</N> in all, <N>{printer.money(best.total / count)}</N> each.</p>
          <p>
            {bestYearly && (isSamePlan
              ? <>Over the years it costs least, too: <N>{printer.money(bestYearly.total)}</N> a year. </>
              : <>Over the years another plan costs least: <N>{choiceWords(bestYearly, printer)}</N>, <N>{printer.money(bestYearly.total)}</N> a year. </>)}
            Least cost is not advice. The maker comes first, and what each way keeps counts more than the difference.
          </p>
        </>
      )}
      {rows.some(({ way }) => way === 'home') && <HomeWarning base={base} />}
      {rows.length === 1 && <p>One way has a price. With a second one, the two are compared.</p>}
      <table class="stack ways">
        <caption>Each way for all devices that it takes, in the order to ask</caption>
        <thead><tr><th scope="col">Way</th><th scope="col" class="amount">Each</th><th scope="col" class="amount">In all</th><th scope="col">Made of</th><th scope="col">Lasts</th><th scope="col" class="amount">A year</th></tr></thead>
        <tbody>
          {WAYS.map((way) => <WayRow key={way} {...props} way={way} row={rows.find((row) => row.way === way)} isBest={rows.length > 1 && isAll(best, way)} />)}
          <KeepRow retire={asked.retire} base={base} />
        </tbody>
      </table>
      {turns.length > 0 && <><h3>Against buying new</h3><ul>{turns.map(({ way, turns: some }) => <li key={way}><N>{turnSentence(way, some, printer)}</N></li>)}</ul></>}
      {curves.ways.length > 1 && (
        <>
          <h3>How it goes with the count</h3>
          <p><N>{cheapestSentence(curves, printer)}</N> At each way’s own price, for devices that are alike.</p>
          <CostChart curves={curves} printer={printer} />
          <details><summary>The same as a table</summary><CostTable curves={curves} printer={printer} caption="Cost in all, by number of devices" /></details>
        </>
      )}
      {best && rows.length > 1 && (
        <>
          <h3>What changes the answer</h3>
          {changes.length === 0 ? <p>No single price, post, or number of weeks changes which plan costs least.</p> : (
            <table class="stack changes">
              <caption>One input at a time, nearest first; all others stay as they are</caption>
              <thead><tr><th scope="col">Input</th><th scope="col" class="amount">Now</th><th scope="col" class="amount">Turns at</th><th scope="col">Least cost then</th></tr></thead>
              <tbody>{changes.slice(0, SHOWN_CHANGES).map((change) => <ChangeRow key={`${change.way}-${change.what}-${change.at > change.now}`} change={change} printer={printer} />)}</tbody>
            </table>
          )}
        </>
      )}
    </>
  );
}

/** The answer as plain text, to send to somebody. */
export function costText({ asked, answer, printer }: Omit<Props, 'base'>, address: string): string {
  const { best, bestYearly, rows, count } = answer;
  return [
    `A new sling for ${printer.count(count)} devices: ${listed(asked.kinds.map((kind) => kindWords(kind, printer)))}.`,
    ...(best && rows.length > 1 ? [`Least cost now: ${choiceWords(best, printer)}, ${printer.money(best.total)} in all, ${printer.money(best.total / count)} each.`] : []),
    ...(bestYearly && rows.length > 1 ? [`Least cost a year: ${choiceWords(bestYearly, printer)}, ${printer.money(bestYearly.total)}.`] : []),
    ...rows.map((row) => `- ${WAY_NAMES[row.way]}${row.count < count ? ` (${printer.count(row.count)} of ${printer.count(count)})` : ''}: ${printer.money(row.each)} each, ${printer.money(row.total)} in all${row.yearly === null ? '' : `, ${printer.money(row.yearly)} a year`}`),
    ...turnsAgainstNew(asked.offers).map(({ way, turns }) => turnSentence(way, turns, printer)),
    'The maker comes first. Least cost is not advice, and keeping the old sling is never open past "retire now".',
    address,
  ].join('\n');
}

/** What of a link was not used, word for word. */
export function NotUsedCost({ pieces }: { pieces: readonly NotUnderstood[] }) {
  return (
    <>
      <p><b>Not used from the link.</b> It counts as not written:</p>
      <ul>{pieces.map(({ piece, why }, at) => <li key={at} data-input><code>{piece}</code>: {why}</li>)}</ul>
    </>
  );
}
