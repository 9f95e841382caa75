/** What a fall loads: the drawing, the ranges with their table, what drives them, the pull over time, and what stays open. */
import { type FallScene, fallScene } from '../../charts/fall-scene.ts';
import { FALL_GAPS } from '../../falls/evidence.ts';
import { timeCourse } from '../../falls/time-course.ts';
import type { ToldFall, ToldLoads } from '../../falls/told-fall.ts';
import type { NotUnderstood } from '../../links/pieces.ts';
import { type Load, RangeChart, TimeChart } from './charts.tsx';
import { FallDrawing } from './drawing.tsx';
import { belowBelay, besideQuery, comparatorLinks, DRIVER_WORDS, GAP_WORDS, headline, kn, metres, rangeWords, stopOf, toldSentence, wayDown } from './words.ts';

interface Props {
  told: ToldFall;
  loads: ToldLoads;
  /** Newtons per kilogram. */
  gravity: number;
  /** Folder of the site, with a slash at its end. */
  base: string;
  /** Query of the comparison that the reader came from, or null. */
  rig: string | null;
  /** Query that gives this fall again, without the rig. */
  query: string;
}

/** The fall to scale, with everything at its middle. */
export function sceneOf(told: ToldFall, { middle: { arrested: { stretchM, slipM }, route } }: ToldLoads): FallScene {
  return fallScene({ segmentsM: route.segmentsM, turnsDeg: route.turns.slice(1).map(({ turnDeg }) => turnDeg), aboveM: told.aboveM, slackM: told.slackM, stretchM, slipM });
}

/** Its drawing. */
export function DrawnFall({ told, loads: { fallM, middle: { arrested: { stretchM, slipM } } }, scene }: Pick<Props, 'told' | 'loads'> & { scene: FallScene }) {
  return (
    <FallDrawing
      scene={scene} aboveM={told.aboveM} ropeOutM={told.ropeOutM} spansM={{ fall: fallM, stretch: stretchM, slip: slipM }} isOntoBelay={told.onto === 'belay'}
      title={`The fall to scale: ${metres(fallM)} until the rope is tight, then ${metres(stretchM)} of stretch${slipM > 0 ? ` and ${metres(slipM)} of rope that runs` : ''}, on ${metres(told.ropeOutM)} of rope.`}
    />
  );
}

/** The loads that are drawn and listed, what stops the fall first. */
export function shownLoads({ topPieceKn, climberKn, belayerKn }: ToldLoads): Load[] {
  // Without a piece the rope pulls as hard at the belay as at the climber.
  return topPieceKn
    ? [{ name: 'Top piece', kn: topPieceKn }, { name: 'Climber', kn: climberKn }, { name: 'Belayer', kn: belayerKn }]
    : [{ name: 'Climber and belay', kn: climberKn }];
}

/** Their ranges as a chart. */
export function LoadRanges({ loads }: { loads: readonly Load[] }) {
  return <RangeChart loads={loads} title={`Peak loads: ${loads.map(({ name, kn: spread }) => `${name.toLowerCase()} ${rangeWords(spread)}`).join('; ')}.`} />;
}

/** All of one answer. */
export function FallResults({ told, loads, gravity, base, rig, query }: Props) {
  const { middle: { arrested: _, route, ...rest }, drivers, gaps } = loads;
  const isOntoBelay = told.onto === 'belay';
  const scene = sceneOf(told, loads);
  const below = belowBelay(scene.belowBelayM, told.onto);
  const course = timeCourse({ ...rest, route }, gravity);
  const stop = stopOf(loads);
  const shown = shownLoads(loads);
  const asked = comparatorLinks(loads, rig);
  const beside = besideQuery(loads, rig, query);
  return (
    <div data-working="sources">
      <p class="headline" aria-live="polite">{headline(loads)}</p>
      <p class="told-as"><span data-input>{toldSentence(told)}</span></p>
      <div class="drawn">
        <div>
          <DrawnFall told={told} loads={loads} scene={scene} />
          <p class="small soft">Rope and heights are to scale, people and pieces are not. With everything at its middle.</p>
        </div>
        <div>
          <p>{wayDown(loads, told.ropeOutM)}</p>
          {below && <p class="note">{below}</p>}
          <LoadRanges loads={shown} />
          <table class="loads">
            <caption>Peak loads, kN</caption>
            <thead><tr><th scope="col">On</th><th scope="col" class="amount">Low</th><th scope="col" class="amount">Middle</th><th scope="col" class="amount">High</th></tr></thead>
            <tbody>{shown.map(({ name, kn: { low, middle, high } }) => <tr key={name}><th scope="row">{name}</th><td class="amount">{kn(low)}</td><td class="amount">{kn(middle)}</td><td class="amount">{kn(high)}</td></tr>)}</tbody>
          </table>
        </div>
      </div>
      <p class="on">
        {asked.length === 0
          ? <>The comparator takes no load as small, or as large, as this.</>
          : asked.map(({ loadKn, query: link }, i) => <a key={i} class={i === 0 ? 'door' : undefined} href={`${base}compare/?${link}`}>{i === 0 ? `${rig ? 'Back to your rig' : 'Compare ways to attach a sling'}, with ${kn(loadKn)}\u00a0kN` : `with the high end, ${kn(loadKn)}\u00a0kN`}</a>)}
        {beside && <a href={`${base}compare/?${beside}`}>with all of its range beside the rating</a>}
      </p>
      <div class="rest">
        <section>
          <h3>What drives the load on {stop.inside}</h3>
          {drivers.length === 0
            ? <p>Nothing that is left open moves it.</p>
            : (
              <table class="drivers">
                <caption>One at a time from end to end, all else at its middle; kN</caption>
                <thead><tr><th scope="col">What</th><th scope="col" class="amount">Load</th></tr></thead>
                <tbody>{drivers.map(({ name, low, high }) => <tr key={name}><th scope="row"><b>{DRIVER_WORDS[name][0]}</b>: {DRIVER_WORDS[name][1]}. <a class="no-print" href={`#from-${name}`}>Figures</a></th><td class="amount">{kn(low)} to {kn(high)}</td></tr>)}</tbody>
              </table>
            )}
          <p class="small no-print"><a href="#sources">Where all numbers come from</a>, <a href="#limits">what is left out</a>.</p>
        </section>
        <section class="over-time">
          <h3>The pull over time</h3>
          <TimeChart course={course} isOntoBelay={isOntoBelay} title={`Pull over time, with everything at its middle: from ${kn(0)} to ${kn(stop.load.middle)} kilonewtons on ${stop.inside} within ${course.lowestAt.toFixed(2)} seconds.`} />
          <p class="small soft">Everything at its middle, up to the lowest point. What comes after is not computed.</p>
        </section>
        {gaps.length > 0 && (
          <section>
            <h3>What nobody has measured</h3>
            <ul>{gaps.map((gap) => <li key={gap}>{GAP_WORDS[gap]} <a href={`${base}gaps/${FALL_GAPS[gap]}/`}>The gap</a></li>)}</ul>
          </section>
        )}
      </div>
    </div>
  );
}

/** What of a link was not used, word for word. */
export function NotUsedFall({ pieces }: { pieces: readonly NotUnderstood[] }) {
  return (
    <>
      <p><b>Not used from the link.</b> It counts as not written:</p>
      <ul>{pieces.map(({ piece, why }, at) => <li key={at} data-input><code>{piece}</code>: {why}</li>)}</ul>
    </>
  );
}
