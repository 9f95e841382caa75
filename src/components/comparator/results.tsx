/** The answer as a view: one sentence, the rows, what the rules of retirement say. The same at build and in the browser. */
import type { NotUnderstood } from '../../links/pieces.ts';
import { FORCE_UNITS, SORT_ORDERS, type ForceUnit, type SortOrder } from '../../links/rig-keys.ts';
import { pairsOf } from '../../strength/compare.ts';
import type { Comparison, Evidence } from '../../strength/types.ts';
import { line } from '../../strength/wording.ts';
import { axisFrame } from './axis-frame.ts';
import { Kept } from './kept.tsx';
import { RetirementLine } from './retirement-line.tsx';
import { type Opened, Rows } from './rows.tsx';
import { figureAddress, type Frame, type Setup } from './setup.ts';

const SORT_NAMES: Readonly<Record<SortOrder, string>> = { low: 'low value', middle: 'middle', name: 'name' };

/** What the island answers to; absent at build. */
export interface Handlers {
  onToggle: (method: string, isOpen: boolean) => void;
  onUnit: (unit: ForceUnit) => void;
  onSort: (sort: SortOrder) => void;
}

export interface ResultsProps {
  setup: Setup;
  evidence: Evidence;
  comparison: Comparison;
  unit: ForceUnit;
  sort: SortOrder;
  opened: Opened;
  notUnderstood: readonly NotUnderstood[];
  handlers?: Handlers;
}

/** Pieces of the link that were not used, word for word. */
function LinkNotes({ notUnderstood }: Pick<ResultsProps, 'notUnderstood'>) {
  return notUnderstood.length === 0 ? null : (
    <div class="note">
      <p><b>Not understood in this link, and not used:</b></p>
      <ul>{notUnderstood.map(({ piece, why }, i) => <li key={i}><code data-input>{piece}</code> <span data-input>({why})</span></li>)}</ul>
    </div>
  );
}

/** The results. */
export function Results(props: ResultsProps) {
  const { setup, evidence, comparison, unit, sort, handlers } = props;
  const { rig, bearing } = comparison;
  const frame: Frame = { ...axisFrame(setup, evidence, comparison, unit), pairsOf: (method) => pairsOf(evidence, comparison, method), stage: handlers === undefined ? 'built' : props.opened === 'all' ? 'kept' : 'drawn' };
  return (
    <section class="results" aria-labelledby="results-heading">
      <h2 id="results-heading" tabIndex={-1}>Ways to attach it</h2>
      <LinkNotes notUnderstood={props.notUnderstood} />
      <p class="summary" role="status">{comparison.summary}</p>
      <p class="computed-with" data-working="comparison">
        Bearing: {bearing.mm} mm, {bearing.measured ? 'as you measured it' : 'the smallest tested, because it was not measured; over a thinner one a sling is weaker'}.
        {(rig.eye === 'sleeved-wire' || rig.eye === 'wire-under-bar') && <> Plastic carries nothing to the break, so the wire inside counts; <a href={`${setup.base}gaps/hitch-on-sleeved-wire/`}>we found no test of a hitch on a covered wire</a>.</>}
        {rig.ratingKn === null && ' Without a rating there is no device in these numbers and no line to count from.'}
        {rig.slingState === 'used' && ' We found no test of what a used sling keeps in a hitch or a knot, so no home method has a number here.'}
      </p>
      <Kept of={[sort, unit]}>{() => <div class="view needs-script">
        <label>Sort <select value={sort} onChange={(event) => handlers?.onSort(event.currentTarget.value as SortOrder)}>
          {SORT_ORDERS.map((one) => <option key={one} value={one} selected={one === sort}>{SORT_NAMES[one]}</option>)}
        </select></label>{' '}
        <label>Unit <select value={unit} onChange={(event) => handlers?.onUnit(event.currentTarget.value as ForceUnit)}>
          {FORCE_UNITS.map((one) => <option key={one} value={one} selected={one === unit}>{one}</option>)}
        </select></label>
      </div>}</Kept>
      <Rows comparison={comparison} frame={frame} sort={sort} opened={props.opened} onToggle={handlers?.onToggle} />
      <p class="soft">
        Few devices ever see more than about <a href={figureAddress(setup.base, setup.upper.figure)}>{line(setup.upper.kn, unit)}<i> trade rule</i></a>; the dotted line marks it.
      </p>
      <Kept of={[rig.sling, JSON.stringify(rig.old)]}>{() => <RetirementLine evidence={evidence} comparison={comparison} frame={frame} />}</Kept>
    </section>
  );
}
