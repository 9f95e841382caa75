/** What a row opens to: the load path, what feeds each link, what moves the answer most, what one clipping error does. */
import { ChainDrawing } from '../../drawings/chain.tsx';
import type { FactorShare, LinkResult, Row } from '../../strength/types.ts';
import { aboveSentence, countsDevice, force, forceNumber, shownSpread, spreadSentence, weakLinkSentence } from '../../strength/wording.ts';
import { figureAddress, type Frame } from './setup.ts';
import { valueText } from './words.ts';

/** A figure as a link to its page, with how we know it. */
export function FigureLink({ id, frame, isShort = false }: { id: string; frame: Frame; isShort?: boolean }) {
  const figure = frame.evidence.figures[id];
  const value = figure ? valueText(figure.value, figure.unit) : '';
  // A cell of a table is named too: the table's own words fit all of its cells.
  const cell = id.includes('#') ? ` (${id.slice(id.indexOf('#') + 1).replaceAll('-', ' ').replace(/\bhmpe\b/, 'HMPE')})` : '';
  const text = isShort && value ? value : figure ? `${figure.what}${cell}${value ? `: ${value}` : ''}` : id;
  return <a href={figureAddress(frame.base, id)}>{text}{figure && <i>{` ${figure.standing.replaceAll('-', ' ')}`}</i>}</a>;
}

/** What one factor brings to a link: its figures, or the assumption that stands for them. */
function Factor({ share, frame }: { share: FactorShare; frame: Frame }) {
  const record = frame.evidence.factors[share.factor];
  return (
    <>
      {share.figures.map((id) => <li key={id}><FigureLink id={id} frame={frame} /></li>)}
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

/** The working of one row. */
export function Working({ row, frame }: { row: Row; frame: Frame }) {
  const counted = frame.demandKn ?? frame.ratingKn;
  const spread = shownSpread(row, frame);
  const weakest = row.links.reduce<LinkResult | null>((most, link) => (most === null || link.first > most.first ? link : most), null);
  return (
    <div class="working">
      {counted !== null && row.attachment && <p>{aboveSentence(row, counted, frame.unit)}</p>}
      {spread && <p>{spreadSentence(spread, frame.unit)} {countsDevice(frame) ? 'The device is in this number.' : 'The device is not in this number.'}</p>}
      {row.rig && <p>With the device in it, half of the rigs break below {force(row.rig.middle, frame.unit)}. {weakLinkSentence(row)}</p>}
      {row.links.length > 0 && (
        <>
          <ChainDrawing links={row.links.map((link) => ({ letter: link.letter, isWeakest: link === weakest && row.strip !== '' }))} />
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
        <p>
          <b>What moves the answer most:</b>{' '}
          {row.moves.filter((move, i) => i === 0 || move.share >= 0.01).map((move, i) => (
            <span key={move.factor}>
              {i > 0 && '; '}{frame.evidence.factors[move.factor]?.what ?? move.factor} ({Math.round(move.share * 100)} % of the spread)
            </span>
          ))}.
        </p>
      )}
      {row.shown.length > 0 && (
        <>
          <p><b>Published beside it, not fed:</b></p>
          <ul>{row.shown.map((id) => <li key={id}><FigureLink id={id} frame={frame} /></li>)}</ul>
        </>
      )}
      <p><b>One clipping error:</b> {row.oneClipError.what}</p>
      <p><a href={`${frame.base}methods/${row.method}/`}>{row.name}: how it is made, and whether we would</a></p>
    </div>
  );
}
