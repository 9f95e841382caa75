/** What a row opens to: the load path, what feeds each link, what moves the answer most, what one clipping error does. */
import { ChainDrawing } from '../../drawings/chain.tsx';
import type { FactorShare, LinkResult, Row } from '../../strength/types.ts';
import { aboveSentence, countsDevice, force, forceNumber, pairShort, shownSpread, spreadSentence, weakLinkSentence } from '../../strength/wording.ts';
import { figureAddress, type Frame } from './setup.ts';
import { valueText } from './words.ts';

/** A figure as a link to its page, with how we know it. Short: where its words stand beside it already. */
export function FigureLink({ id, frame, isShort = false }: { id: string; frame: Frame; isShort?: boolean }) {
  const figure = frame.evidence.figures[id];
  const value = figure ? valueText(figure.value, figure.unit) : '';
  // A cell of a table is named too: the table's own words fit all of its cells.
  const cell = id.includes('#') ? ` (${id.slice(id.indexOf('#') + 1).replaceAll('-', ' ').replace(/\bhmpe\b/, 'HMPE')})` : '';
  const text = isShort && value ? `${value}${cell}` : figure ? `${figure.what}${cell}${value ? `: ${value}` : ''}` : id;
  return <a href={figureAddress(frame.base, id)}>{text}{figure && <i>{` ${figure.standing.replaceAll('-', ' ')}`}</i>}</a>;
}

/** Figures as items of a list. Cells of one table share its words: these are said once, and each value leads to its cell. */
function Items({ ids, frame }: { ids: readonly string[]; frame: Frame }) {
  const nameOf = (id: string) => frame.evidence.figures[id]?.what ?? id;
  return (
    <>
      {[...new Set(ids.map(nameOf))].map((name) => (
        <li key={name}>
          {name}: {ids.filter((id) => nameOf(id) === name).map((id, i) => [i > 0 && '; ', <FigureLink key={id} id={id} frame={frame} isShort />])}
        </li>
      ))}
    </>
  );
}

/** What one factor brings to a link: its figures, or the assumption that stands for them. */
function Factor({ share, frame }: { share: FactorShare; frame: Frame }) {
  const record = frame.evidence.factors[share.factor];
  return (
    <>
      <Items ids={share.figures} frame={frame} />
      {record && (share.assumed || record.assumed || record.times || share.bridged) && (
        <li>
          <a href={figureAddress(frame.base, `assumed/factor-${share.factor}`)}>
            {share.bridged ? 'carried over from another width, with extra spread' : share.assumed ? 'assumed: no figure feeds it' : 'with an assumed multiplier'}
          </a>
        </li>
      )}
      {share.between && <li>between two tested bearings</li>}
    </>
  );
}

/** Low, middle and high of a link. A device's lower tail is never quoted by itself: its mean over the rating is assumed. */
function spreadOf(link: LinkResult, frame: Frame): string {
  if (link.part === 'device') return `half below ${force(link.spread.middle, frame.unit)}; assumed, so its low end is not given`;
  const { low, middle, high } = link.spread;
  return `${forceNumber(low, frame.unit)} \u2013 ${forceNumber(middle, frame.unit)} \u2013 ${force(high, frame.unit)}`;
}

const AS_BUILT = { __html: '' };

/** The working of one row. */
export function Working({ row, frame }: { row: Row; frame: Frame }) {
  // Nothing is ever set by this: while the script takes over, what was built stays. With another key it is drawn anew.
  if (frame.stage === 'kept') return <div key="built" class="working" dangerouslySetInnerHTML={AS_BUILT} />;
  const counted = frame.demandKn ?? frame.ratingKn;
  const spread = shownSpread(row, frame);
  const pairs = frame.pairsOf(row.method);
  const length = frame.evidence.methods[row.method]?.length;
  const weakest = row.links.reduce<LinkResult | null>((most, link) => (most === null || link.first > most.first ? link : most), null);
  return (
    <div class="working">
      {counted !== null && row.attachment && <p>{aboveSentence(row, counted, frame.unit)}</p>}
      {spread && <p>{spreadSentence(spread, frame.unit)} {countsDevice(frame) ? 'The device is in this number.' : 'The device is not in this number.'}</p>}
      {row.rig && <p>With the device in it, half of the rigs break below {force(row.rig.middle, frame.unit)}. {weakLinkSentence(row)}</p>}
      {row.links.length > 0 && (
        <>
          {frame.stage === 'drawn' && <ChainDrawing links={row.links.map((link) => ({ letter: link.letter, isWeakest: link === weakest && row.strip !== '' }))} />}
          <table class="links">
            <caption>Each link by itself: low, middle, high, and what feeds it</caption>
            <tbody>
              {row.links.map((link) => (
                <tr key={link.name}>
                  <th scope="row"><b>{link.letter}</b> {link.name}{link.legs && `, legs: ${link.legs}`}</th>
                  <td>{spreadOf(link, frame)}<br />certainty {link.certainty}</td>
                  <td><ul>{link.factors.map((share) => <Factor key={share.factor} share={share} frame={frame} />)}</ul></td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
      {row.moves.length > 0 && (
        <>
          <p><b>What moves the answer most:</b></p>
          <ul>
            {row.moves.filter((move, i) => i === 0 || move.share >= 0.01).map(({ factor, figures, share }) => (
              <li key={factor}>
                {Math.round(share * 100)} % of the spread: {figures.length > 0
                  ? <ul><Items ids={figures} frame={frame} /></ul>
                  : <a href={figureAddress(frame.base, `assumed/factor-${factor}`)}>{frame.evidence.factors[factor]?.what}<i> assumed</i></a>}
              </li>
            ))}
          </ul>
        </>
      )}
      {pairs.length > 0 && (
        <>
          <p><b>Against each other method</b> this one is, on the same device and by the same knowledge, but in other pieces:</p>
          <ul>{pairs.map(({ method, name, wins }) => <li key={method}>{name}: {pairShort(wins)}</li>)}</ul>
        </>
      )}
      {row.shown.length > 0 && (
        <>
          <p><b>Published beside it, not fed:</b></p>
          <ul><Items ids={row.shown} frame={frame} /></ul>
        </>
      )}
      {row.finishedCm !== null && length && (
        <p>
          {row.finishedCm ? `Finished about ${Math.round(row.finishedCm)} cm of` : 'Too short to be made from'} <span data-input>{frame.lengthCm} cm</span>: {length.words}
          {length.why && <>; <a href={figureAddress(frame.base, `assumed/method-${row.method}`)}>what that takes off is assumed</a></>}.
        </p>
      )}
      <p><b>On the rack:</b> {row.bulk}</p>
      <p><b>One clipping error:</b> {row.oneClipError.what}</p>
      <p><a href={`${frame.base}methods/${row.method}/`}>How it is made, and whether we would</a></p>
    </div>
  );
}
