/** The comparison itself: one table, whose cells hold the drawing. */
import type { Comparison, Group, Row } from '../../strength/types.ts';
import {
  aboveShort, certaintyWords, force, GROUP_HEADINGS, GROUP_ORDER, LETTERS, countsDevice, lowAndMiddle, nothingRanked, partName, rowsOf, shownSpread, weakLinkShort,
} from '../../strength/wording.ts';
import { Kept } from './kept.tsx';
import { Axis, lane, strip } from './lane.tsx';
import type { Frame } from './setup.ts';
import { FigureLink, Working } from './working.tsx';

/** Which workings are in the page: all (as built, for a reader without script) or those that are open. */
export type Opened = 'all' | ReadonlySet<string>;

interface RowsProps {
  comparison: Comparison;
  frame: Frame;
  sort: 'low' | 'middle' | 'name';
  opened: Opened;
  onToggle?: ((method: string, isOpen: boolean) => void) | undefined;
}

/** True where the row has a figure to lead to, so that its numbers have an origin on this page. */
const hasFigures = (row: Row): boolean =>
  row.figures.length > 0 || row.shown.length > 0 || row.links.some((link) => link.factors.length > 0) || row.nearest !== undefined;

/** In place of a drawing: why there is none, and what was published. */
function Published({ row, frame }: { row: Row; frame: Frame }) {
  const { figures } = frame.evidence;
  // Cells of one table share its words: these are said once, and each value leads to its cell.
  const names = [...new Set(row.shown.map((id) => figures[id]?.what ?? id))];
  return (
    <>
      {row.state !== 'apart' && row.reasons.map((reason) => <p key={reason}>{reason}</p>)}
      {row.shown.length === 0 && row.reasons.length === 0 && <p>No figure for this rig.</p>}
      {names.map((name) => (
        <p key={name} class="published">
          Published, not computed: {name}:{' '}
          {row.shown.filter((id) => (figures[id]?.what ?? id) === name).map((id, i) => <span key={id}>{i > 0 && '; '}<FigureLink id={id} frame={frame} isShort /></span>)}
        </p>
      ))}
    </>
  );
}

/**
 * A row with its drawing, or with what was published where nothing could be computed. It is drawn again only for another
 * row; one without numbers often says the same for another rig.
 */
function fullRow(row: Row, { frame, opened, onToggle }: RowsProps) {
  const isOpen = opened !== 'all' && opened.has(row.method);
  const isDrawn = opened === 'all' || isOpen;
  return (
    <Kept key={row.method} of={[row.strip ? row : JSON.stringify(row), frame.unit, isOpen, isDrawn && frame]}>{() => drawnRow(row, frame, isOpen, isDrawn, onToggle)}</Kept>
  );
}

function drawnRow(row: Row, frame: Frame, isOpen: boolean, isDrawn: boolean, onToggle: RowsProps['onToggle']) {
  const id = `work-${row.method}`;
  const counted = frame.demandKn ?? frame.ratingKn;
  const spread = shownSpread(row, frame);
  const short = counted === null ? null : aboveShort(row, counted, frame.unit);
  const first = weakLinkShort(row);
  return (
    <tr class="full" data-working={hasFigures(row) ? id : undefined}>
      <th scope="row">{row.place !== undefined && <b class="place">{`${row.place}. `}</b>}{row.name}</th>
      <td class="draw">
        {row.state === 'apart' && <Kept of={[row.reasons.join(' ')]}>{() => row.reasons.map((reason) => <p key={reason} class="reason">{reason}</p>)}</Kept>}
        {short && <p class="count">{short}</p>}
        {row.dots.length > 0 && lane(row, frame)}
        {row.strip && <Kept of={[row.strip]}>{() => strip(row.strip)}</Kept>}
        {row.dots.length === 0 && <Published row={row} frame={frame} />}
      </td>
      <Kept of={[spread, frame.unit, first, row.finishedCm]}>{() => (
        <>
          <td class="spread">{spread && lowAndMiddle(spread, frame.unit)}</td>
          <td class="first">{first}</td>
          <td class="error">{row.oneClipError.releases ? <b>releases the device</b> : 'stays on the device'}</td>
          <td class="length">{row.finishedCm === null ? '' : row.finishedCm ? `${Math.round(row.finishedCm)} cm` : 'too short'}</td>
        </>
      )}</Kept>
      <Kept of={[certaintyWords(row), isOpen, isDrawn && row, isDrawn && frame]}>{() => (
        <td class="more">
          <details id={id} open={isOpen} onToggle={(event) => onToggle?.(row.method, event.currentTarget.open)}>
            <summary><span>{certaintyWords(row)}</span> <u>working</u></summary>
            {isDrawn && <Working row={row} frame={frame} />}
          </details>
        </td>
      )}</Kept>
    </tr>
  );
}

/** The nearest tested case: on what it was tested, and its force in the reader's unit where it was printed in another. */
function nearestWords({ figure, weakerThan, onMm, kn }: NonNullable<Row['nearest']>, frame: Frame) {
  const isOtherUnit = kn !== null && frame.evidence.figures[figure]?.unit !== frame.unit;
  return (
    <>
      {' '}{weakerThan ? 'Weaker than the nearest test' : 'Nearest test'}{onMm !== undefined && `, on ${onMm} mm`}: <FigureLink id={figure} frame={frame} />
      {isOtherUnit && ` (${force(kn, frame.unit)})`}.
    </>
  );
}

/** A method without a figure: one line with the nearest tested case and the gap. */
function ShortRow({ row, frame }: { row: Row; frame: Frame }) {
  const id = `work-${row.method}`;
  return (
    <tr class="short" id={id} data-working={row.nearest ? id : undefined}>
      <th scope="row"><a href={`${frame.base}methods/${row.method}/`}>{row.name}</a></th>
      <td colSpan={6}>
        {row.reasons.join(' ')}
        {row.oneClipError.releases && <> <b>One clipping error releases the device.</b></>}
        {row.nearest && nearestWords(row.nearest, frame)}
        {row.gap && <> <a href={`${frame.base}gaps/${row.gap}/`}>The test that would settle it</a></>}
      </td>
    </tr>
  );
}

const isShort = (group: Group): boolean => group === 'no-data' || group === 'other-sling';

/** One group with its divider. */
function GroupOfRows({ group, ...props }: RowsProps & { group: Group }) {
  const { frame } = props;
  const rows = rowsOf(props.comparison, group, props.sort);
  if (rows.length === 0 && group !== 'ranked') return null;
  const name = `group g-${group}`;
  if (isShort(group)) {
    return (
      <Kept of={rows}>{() => (
        <tbody class={name}>
          <tr class="divider"><th scope="rowgroup">{GROUP_HEADINGS[group]}<span data-working="comparison">{` (${rows.length})`}</span></th><td colSpan={6} /></tr>
          {rows.map((row) => (
            <Kept key={row.method} of={[row.reasons.join(' '), row.gap, row.nearest?.figure, row.nearest?.weakerThan, frame.unit]}>{() => <ShortRow row={row} frame={frame} />}</Kept>
          ))}
        </tbody>
      )}</Kept>
    );
  }
  const axis = rows.some((row) => row.dots.length > 0) && [frame.unit, frame.ratingKn, frame.demandKn];
  return (
    <tbody class={name}>
      <Kept of={axis || []}>{() => (
        <tr class="divider"><th scope="rowgroup">{GROUP_HEADINGS[group]}</th><td colSpan={6}>{axis && <Axis frame={frame} />}</td></tr>
      )}</Kept>
      {rows.length === 0 && <tr class="short"><td colSpan={7}>{nothingRanked(props.comparison.rig)}</td></tr>}
      {rows.map((row) => fullRow(row, props))}
    </tbody>
  );
}

/** Legend of the drawing, in the order in which the marks are met. */
function Legend({ frame }: { frame: Frame }) {
  const counted = frame.demandKn === null ? 'the rating' : 'what it must bear';
  return (
    <p class="legend" data-working="comparison">
      <span><svg viewBox="0 0 12 12" aria-hidden="true"><circle class="dots" cx="6" cy="6" r="5" /></svg> one rig of 20, above {counted}</span>
      <span><svg viewBox="0 0 12 12" aria-hidden="true"><circle class="dots below" cx="6" cy="6" r="4" /></svg> below it</span>
      <span><svg viewBox="0 0 12 12" aria-hidden="true"><path class="ticks" d="M3 1v10M9 1v10" /></svg> test pulls of the same method, sling and kind of eye</span>
      <span>What breaks first, in 20 rigs: {LETTERS.map((letter, i) => <span key={letter}>{i > 0 && ', '}<b>{letter}</b> {partName(letter).replace(/^the /, '')}</span>)}</span>
    </p>
  );
}

/** All rows of a comparison, the maker's way first. */
export function Rows(props: RowsProps) {
  return (
    <>
      <Kept of={[props.frame.demandKn === null]}>{() => <Legend frame={props.frame} />}</Kept>
      <table class="rows" id="comparison">
        <caption class="hidden">Ways to attach a sling, each with what breaks first and at what force</caption>
        <Kept of={[countsDevice(props.frame)]}>{() => (
          <thead>
            <tr>
              <th scope="col">Method</th>
              <th scope="col">{countsDevice(props.frame) ? 'The whole rig, with the device' : 'The attachment, without the device'}</th>
              <th scope="col">Low value and middle</th>
              <th scope="col">Breaks first</th>
              <th scope="col">One clipping error</th>
              <th scope="col">Length</th>
              <th scope="col" class="hidden">Certainty and working</th>
            </tr>
          </thead>
        )}</Kept>
        {GROUP_ORDER.map((group) => <GroupOfRows key={group} group={group} {...props} />)}
      </table>
    </>
  );
}
