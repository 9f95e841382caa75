/**
 * All that a series of breaks says, section by section. Fed by `analyse` alone: no record stands behind it, so the same
 * markup serves a published series at build and the reader's own in the browser. What cannot be given is said in words.
 *
 * Numbers of the reader, and invented ones, are marked `data-input` (`isOwn`). On the page of a published series the
 * caller sets the whole inside one `data-working` element instead, whose links lead to the figures.
 */
import type { ComponentChildren } from 'preact';
import { type Analysis, type Bounds, type CompetingLink, type Fit, isNone, type Outliers, type Shares } from '../../break-tests/analysis.ts';
import type { Grubbs } from '../../break-tests/grubbs.ts';
import type { OrderBound } from '../../break-tests/order-bound.ts';
import type { Pair } from '../../break-tests/tolerance-bound.ts';
import { chance, FAMILY_NAMES, type ForcePrinter, forcePrinter, modeLetters, noneWords, percent, percents, three } from './words.ts';

export interface StatisticsProps {
  readonly analysis: Analysis;
  /** Sign of the unit of the pulls. */
  readonly unit: string;
  /** Numbers of the reader, or invented. */
  readonly isOwn: boolean;
  /** Rank of the sections' headings. */
  readonly heading?: 'h2' | 'h3';
}

interface Inner extends StatisticsProps {
  readonly print: ForcePrinter;
  readonly Heading: 'h2' | 'h3';
  /** Attributes of what holds a number. */
  readonly mark: { readonly 'data-input'?: true };
}

/** A number in running text. */
const Num = ({ mark, children }: { mark: Inner['mark']; children: ComponentChildren }) => <span class="num" {...mark}>{children}</span>;

/** The pair of a bound as a reader says it: share of pieces above, and how sure. */
export const pairWords = ({ coverage, confidence }: Pair): string => `${percent(coverage)} of pieces, ${percent(confidence)} sure`;

function SummaryTable({ analysis, print, mark }: Inner) {
  const { summary, atLeast, pulls, level } = analysis;
  const { spread } = summary;
  const rows: [string, string, string | null][] = [
    ['Pulls', atLeast > 0 ? `${pulls}, of which ${atLeast} did not break the part` : String(pulls), null],
    ['Mean', print.force(summary.mean), spread && print.interval(spread.meanInterval)],
    ...(spread
      ? [
          ['Standard deviation', print.force(spread.sd), print.interval(spread.sdInterval)],
          ['Coefficient of variation', percent(spread.cv), percents(spread.cvInterval)],
        ] as [string, string, string][]
      : []),
    ['Smallest', print.force(summary.minimum), null],
    ['Largest', print.force(summary.maximum), null],
  ];
  return (
    <table class="stack numbers">
      <caption>At the force at which each pull ended, whatever gave way</caption>
      <thead><tr><th scope="col">What</th><th scope="col">These pulls</th><th scope="col" {...mark}>Interval, {percent(level)}</th></tr></thead>
      <tbody>
        {rows.map(([what, value, interval]) => (
          <tr key={what}><th scope="row">{what}</th><td {...mark}>{value}</td>{interval ? <td data-label="Interval" {...mark}>{interval}</td> : <td />}</tr>
        ))}
      </tbody>
    </table>
  );
}

function ThreeSigma({ analysis, print, mark, Heading }: Inner) {
  const { promise, summary, pulls } = analysis;
  if (isNone(promise) || !summary.spread) return null;
  const { meanLessThreeSd } = summary.spread;
  return (
    <>
      <Heading id="three-sigma">Mean less three deviations</Heading>
      <p>
        It is <b><Num mark={mark}>{print.force(meanLessThreeSd)}</Num></b>{meanLessThreeSd <= 0 && ', below nothing: as a strength it says nothing'}.
        {' '}If mean and deviation were known for certain, <Num mark={mark}>{percent(promise.nominal)}</Num> of pieces would break above it.
        {' '}They come from <Num mark={mark}>{pulls}</Num> pulls. The chance that it keeps that promise is <Num mark={mark}>{percent(promise.confidenceOfNominal)}</Num>.
        {' '}What one can be <Num mark={mark}>{percent(0.95)}</Num> sure of: <Num mark={mark}>{percent(promise.coverage)}</Num> of pieces break above it.
        {' '}The next pull does so with a chance of <Num mark={mark}>{percent(promise.nextPullAbove)}</Num>. All this is for normal pulls of one lot.
      </p>
    </>
  );
}

/** A bound of a distribution: the force and its factor, or why there is none. */
function boundWords(part: Bounds['normal'], print: ForcePrinter): string {
  if (isNone(part)) return noneWords(part);
  return part.bound > 0 ? `${print.force(part.bound)} (k ${three(part.k)})` : `below 0, which says nothing (k ${three(part.k)})`;
}

function orderWords({ rank, bound, attained, pullsNeeded }: OrderBound, print: ForcePrinter): string {
  if (rank === null || bound === null) return `cannot: takes ${pullsNeeded} pulls`;
  return `${print.force(bound)}, pull ${rank} from below (${percent(attained)} sure)`;
}

function BoundsTable({ analysis, print, mark, Heading }: Inner) {
  const { bounds, atLeast, summary } = analysis;
  return (
    <>
      <Heading id="bounds">Lower bounds</Heading>
      <p>
        A bound is a force that a share of all pieces breaks above, with a stated confidence. The first two are exact where pulls follow that distribution. The last takes no distribution for granted.
        {atLeast > 0 && ' Pulls that did not break the part count as if they had: this can only lower a bound.'}
        {summary.noSpread && ` ${noneWords({ why: summary.noSpread })} So no bound can be computed from a distribution.`}
      </p>
      <table class="stack numbers">
        <caption>One-sided lower bounds</caption>
        <thead><tr><th scope="col">Above it</th>{!summary.noSpread && <><th scope="col">Normal</th><th scope="col">Lognormal</th></>}<th scope="col">Smallest pulls alone</th></tr></thead>
        <tbody>
          {bounds.map(({ pair, normal, lognormal, order }) => (
            <tr key={`${pair.coverage}/${pair.confidence}`}>
              <th scope="row" {...mark}>{pairWords(pair)}</th>
              {!summary.noSpread && <><td data-label="Normal" {...mark}>{boundWords(normal, print)}</td><td data-label="Lognormal" {...mark}>{boundWords(lognormal, print)}</td></>}
              <td data-label="Smallest pulls alone" {...mark}>{orderWords(order, print)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function testWords({ shapiroWilk, andersonDarling }: Fit): string {
  const parts = [];
  if (shapiroWilk) parts.push(`Shapiro-Wilk W ${three(shapiroWilk.w)}, ${chance(shapiroWilk.p)}`);
  if (andersonDarling) {
    const { a2, p, significance } = andersonDarling;
    const level = p ?? significance;
    parts.push(`Anderson-Darling A² ${three(a2)}${level === null ? ', too few pulls for a p' : `, ${chance(level)}`}`);
  }
  return parts.join('; ');
}

/** What the tests say at this n, without overstating it. */
function fitSentence(fits: readonly Fit[], pulls: number): string {
  const [first] = fits;
  if (first?.untested) return `No test can say which of them is right. ${noneWords(first.untested)}`;
  const ps = fits.map(({ shapiroWilk, andersonDarling }) => shapiroWilk?.p ?? andersonDarling?.significance ?? null);
  const poor = fits.filter((_, i) => (ps[i] ?? 1) < 0.05).map(({ family }) => FAMILY_NAMES[family].toLowerCase());
  const few = pulls < 20 ? ' So few pulls show only a gross misfit: that none is found does not mean that a distribution is right.' : '';
  return poor.length === 0 ? `No test speaks against any of them.${few}` : `The test speaks against: ${poor.join(', ')}.${few}`;
}

function Fits({ analysis, print, mark, Heading }: Inner) {
  const { fits, atLeast, level, pulls } = analysis;
  if (isNone(fits)) return <><Heading id="fits">Distributions</Heading><p>No distribution is fitted. {noneWords(fits)}</p></>;
  const best = Math.max(...fits.all.map(({ logLikelihood }) => logLikelihood));
  const isTested = fits.all.every(({ untested }) => untested === null);
  return (
    <>
      <Heading id="fits">Distributions</Heading>
      <p>
        Each is fitted by maximum likelihood{atLeast > 0 ? ', with pulls that did not break the part as “at least”' : ''}. Intervals are approximate. {fitSentence(fits.all, pulls)}
      </p>
      <table class="stack numbers">
        <caption {...mark}>{atLeast > 0 ? 'Strength of the part in question' : 'Breaking force'}, with intervals of {percent(level)}</caption>
        <thead><tr><th scope="col">Distribution</th><th scope="col">Half break below</th><th scope="col">One in twenty breaks below</th>{isTested && <th scope="col">Test of fit</th>}<th scope="col">Log likelihood</th></tr></thead>
        <tbody>
          {fits.all.map((fit) => (
            <tr key={fit.family}>
              <th scope="row">{FAMILY_NAMES[fit.family]}</th>
              <td data-label="Half break below" {...mark}>{print.force(fit.half.best)} ({print.interval(fit.half)})</td>
              <td data-label="One in twenty breaks below" {...mark}>{print.force(fit.twentieth.best)} ({print.interval(fit.twentieth)})</td>
              {isTested && <td data-label="Test of fit" {...mark}>{testWords(fit)}</td>}
              <td data-label="Log likelihood" {...mark}>{fit.logLikelihood === best ? 'best' : `lower by ${(best - fit.logLikelihood).toFixed(2)}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

const grubbsWords = ({ value, g, critical, p, beyond }: Grubbs, print: ForcePrinter | null): string =>
  `${print ? `${print.force(value)} lies ` : ''}${g.toFixed(3)} deviations from the mean, ${beyond ? 'beyond' : 'within'} the limit of ${critical.toFixed(3)} (${chance(p)})`;

function OutlierList({ outliers, print, mark }: { outliers: Outliers; print: ForcePrinter; mark: Inner['mark'] }) {
  const { grubbs, grubbsOfLogs, dixon } = outliers;
  const [first] = dixon ?? [];
  return (
    <ul>
      <li>Grubbs, farthest pull: <Num mark={mark}>{grubbsWords(grubbs, print)}</Num>.</li>
      <li>The same of the logarithms: <Num mark={mark}>{grubbsWords(grubbsOfLogs, null)}</Num>.</li>
      {first && <li>Dixon, {first.end === 'lowest' ? 'smallest' : 'largest'} pull: <Num mark={mark}>Q {three(first.q)}, {first.beyond ? 'beyond' : 'within'} the limit of {three(first.critical)}</Num>.</li>}
    </ul>
  );
}

function OutlierSection(props: Inner) {
  const { outliers } = props.analysis;
  return (
    <>
      <props.Heading id="outliers">Pulls far from the rest</props.Heading>
      {isNone(outliers) ? <p>Not tested. {noneWords(outliers)}</p> : (
        <>
          <p>These tests take pulls to be normal, and allow one false alarm in twenty series. They only report. No pull is taken out, and none should be without a cause seen at the machine.</p>
          <OutlierList {...props} outliers={outliers} />
        </>
      )}
    </>
  );
}

function ShareTable({ shares, caption, of, letters, level, mark }: { shares: Shares; caption: string; of: string; letters?: ReadonlyMap<string, string>; level: number; mark: Inner['mark'] }) {
  return (
    <>
      <table class="stack numbers">
        <caption>{caption}{shares.unnamed > 0 && <>. Not recorded for <Num mark={mark}>{shares.unnamed}</Num>, which are left out</>}</caption>
        <thead><tr><th scope="col">{of}</th><th scope="col">Pulls</th><th scope="col">Share</th><th scope="col" {...mark}>Exact interval, {percent(level)}</th></tr></thead>
        <tbody>
          {shares.shares.map(({ mode, count, share, exact }) => (
            <tr key={mode}>
              <th scope="row" {...mark}>{letters && <b>{letters.get(mode)}</b>} {mode}</th>
              <td data-label="Pulls" {...mark}>{count}</td><td data-label="Share" {...mark}>{percent(share)}</td><td data-label="Interval" {...mark}>{percents(exact)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function ModesSection({ analysis, mark, Heading }: Inner) {
  const { modes, links, level } = analysis;
  const nothing = isNone(modes) && isNone(links);
  return (
    <>
      <Heading id="modes">What broke</Heading>
      {nothing && <p>Nobody wrote down how the pulls broke, so there are no shares.</p>}
      {!isNone(modes) && <ShareTable shares={modes} caption="How it broke" of="Mode" letters={modeLetters(modes)} level={level} mark={mark} />}
      {!isNone(links) && <ShareTable shares={links} caption="Which part broke" of="Part" level={level} mark={mark} />}
      {!nothing && <p class="small">Each interval stands for its own share, not for all at once.</p>}
    </>
  );
}

/** A link's middle or low value, by the fit and by the bounds that need no independence. */
const linkWords = (fit: CompetingLink['half'], anyway: CompetingLink['halfAnyway'], print: ForcePrinter): [string, string] => [
  fit ? `${print.force(fit.best)} (${print.interval(fit)})` : 'too few of its breaks differ',
  anyway ? (anyway.low === Infinity ? 'not seen in these pulls' : print.interval(anyway)) : 'a pull ended with no break',
];

function CompetingSection({ analysis, print, mark, Heading }: Inner) {
  const { competing } = analysis;
  if (isNone(competing)) return competing.why === 'one-link' ? <p>{noneWords(competing)}</p> : null;
  return (
    <>
      <Heading id="competing">Each part’s own strength</Heading>
      <p>
        Where one part breaks, the others were at least as strong. If the strengths of the parts of one rig do not depend on each other, each part’s own strength follows.
        {' '}<b>From such pulls nobody can test that.</b> The columns “anyway” give what is left without it. They count these pulls alone, with no margin for luck.
      </p>
      <table class="stack numbers">
        <caption>Lognormal fits, the other parts’ breaks as “at least”; and Peterson’s bounds</caption>
        <thead><tr><th scope="col">Part</th><th scope="col">Its breaks</th><th scope="col">Half break below</th><th scope="col">Anyway</th><th scope="col">One in twenty breaks below</th><th scope="col">Anyway</th></tr></thead>
        <tbody>
          {competing.links.map((link) => {
            const [half, halfAnyway] = linkWords(link.half, link.halfAnyway, print);
            const [low, lowAnyway] = linkWords(link.twentieth, link.twentiethAnyway, print);
            return (
              <tr key={link.mode}>
                <th scope="row" {...mark}>{link.mode}</th>
                <td data-label="Its breaks" {...mark}>{link.pulls.broken.length}</td>
                <td data-label="Half break below" {...mark}>{half}</td><td data-label="Anyway" {...mark}>{halfAnyway}</td>
                <td data-label="One in twenty breaks below" {...mark}>{low}</td><td data-label="Anyway" {...mark}>{lowAnyway}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
}

/** All sections, in the order in which a tester asks. */
export function SeriesStatistics(props: StatisticsProps) {
  const { analysis, unit, isOwn, heading = 'h2' } = props;
  const inner: Inner = { ...props, print: forcePrinter(analysis.summary, unit), Heading: heading, mark: isOwn ? { 'data-input': true } : {} };
  const { summary } = analysis;
  return (
    <>
      <inner.Heading id="numbers">In numbers</inner.Heading>
      <SummaryTable {...inner} />
      <p>
        {summary.spread ? 'Intervals are exact for normal pulls. ' : `${noneWords({ why: summary.noSpread ?? 'one-pull' })} `}
        The smallest is the smallest of these pulls: the next may break below it.
      </p>
      <ThreeSigma {...inner} />
      <BoundsTable {...inner} />
      <Fits {...inner} />
      <OutlierSection {...inner} />
      <ModesSection {...inner} />
      <CompetingSection {...inner} />
    </>
  );
}
