/** A fall beside the rating: for each method that has a number, in how many falls of twenty the load exceeds what the attachment breaks at. */
import type { FallBeside } from '../../links/fall-beside-link.ts';
import type { Comparison, Row } from '../../strength/types.ts';
import { aboutOfTwenty, force } from '../../strength/wording.ts';
import { Axis, lane } from './lane.tsx';
import type { Frame } from './setup.ts';

interface Props {
  fall: FallBeside;
  /** Twenty equally likely loads, kN. */
  loads: readonly number[];
  /** Share of falls in which the load exceeds a strength whose twenty equally likely forces are given. */
  exceeds(dots: readonly number[]): number;
  comparison: Comparison;
  frame: Frame;
}

/** A row that only draws: dots and nothing else. */
const drawn = (like: Row, dots: readonly number[]): Row => ({ ...like, dots: [...dots], ticks: [] });

export function FallBesideRows({ fall, loads, exceeds, comparison, frame }: Props) {
  const { unit, base } = frame;
  const rows = comparison.rows.filter(({ dots }) => dots.length === loads.length);
  const [any] = comparison.rows;
  const limits = `${base}falls/#limits`;
  return (
    <>
      <p data-input>Nine in ten loads on the top piece lie between {force(fall.lowKn, unit)} and {force(fall.highKn, unit)}{fall.query && <>, <a href={`${base}falls/?${fall.query}`}>as this fall gives them</a></>}. Below are twenty of them, equally likely.</p>
      <Axis frame={frame} />
      {any && lane(drawn(any, loads), frame)}
      {rows.length === 0 ? <p>No method has a number for this rig, so nothing stands against the load.</p> : (
        <>
          <p>Of 20 such falls, in so many the load exceeds what the attachment breaks at:</p>
          <ul data-input>{rows.map((row) => <li key={row.method}><b>{row.name}</b>: {aboutOfTwenty(Math.round(20 * exceeds(row.dots)))}{lane(drawn(row, row.dots), frame)}</li>)}</ul>
        </>
      )}
      <p>
        <b>Not in these numbers:</b> whether the placement stays; the rock, wear and wet. The strengths are of slow pulls, and a fall is fast. The load on the top piece is not the load on the sling alone. Load and strength are taken as independent. <a href={limits}>Limits of the loads</a>
      </p>
    </>
  );
}
