/** One item: its verdict with every reason, what is known of it, its inspections, and what can be done with it. */
import { Component } from 'preact';
import type { FieldKey } from '../../rack/field-names.ts';
import { itemName } from '../../rack/item-words.ts';
import { type PartDay, writePartDay } from '../../rack/part-day.ts';
import type { DateFault } from '../../rack/sling-history.ts';
import { EVENTS, EXPOSURES, FINDINGS, type Inspection, type Item, RACK_EYES, RACK_MATERIALS, RACK_USES, type RackEvent } from '../../rack/types.ts';
import { MAKER_YEARS, WIDTH_RANGE_MM } from '../../retirement/answers.ts';
import type { Reason, Verdict } from '../../retirement/verdict.ts';
import { EVENT_ANSWERS, EXPOSURE_ANSWERS, FINDING_ANSWERS, MATERIAL_ANSWERS, USE_ANSWERS } from '../retirement/words.ts';
import { Choice, type Read, readDate, readNumber, takeOver, Text, type TextProps, Ticks, type Unread } from './fields.tsx';
import { Count, Day, HeadlineView } from './list.tsx';
import { replaceHref, retireHref } from './next-steps.ts';
import type { RackSetup } from './setup.ts';
import { FIELDS, faultText, findingsText, openText, ruleName } from './words.ts';

/** An inspection that is being written. */
export type Draft = Omit<Inspection, 'id'>;

export interface ItemHandlers {
  /** Writes one field. */
  write: (field: FieldKey, value: unknown) => void;
  inspect: (draft: Draft) => void;
  takeOut: (inspection: Inspection) => void;
  remove: (removed: boolean) => void;
  split: (n: number) => void;
  renew: () => void;
}

/** What was typed and not taken over yet. It outlives the view, so that leaving it loses nothing. */
export interface Typed { faults: Unread; drafts: Map<string, Draft> }

export interface ItemProps {
  item: Item;
  verdict: Verdict;
  faults: readonly DateFault[];
  on: string;
  setup: RackSetup;
  typed: Typed;
  handlers: ItemHandlers;
}

/** One reason: what it asks, its rule, why, and where its sources stand. */
function ReasonView({ reason, on, setup }: { reason: Reason; on: string; setup: RackSetup }) {
  const rule = setup.rules[reason.rule];
  const name = ruleName(reason, setup.rules);
  return (
    <li>
      <HeadlineView of={reason.asks} on={on} />. {name}.{' '}
      {rule ? reason.unknown.length === 0 && `${rule.says} ` : 'The maker decides, whatever else is said here.'}
      {reason.unknown.length > 0 && <>Not known: {openText(reason.unknown)}. </>}
      {rule && <a href={`${setup.base}retire/#rule-${reason.rule}`}>Sources<span class="hidden"> of: {name}</span></a>}
    </li>
  );
}

function VerdictBox({ verdict: { strictest, reasons, milder }, faults, on, setup }: Pick<ItemProps, 'verdict' | 'faults' | 'on' | 'setup'>) {
  const met = reasons.filter(({ why }) => why === 'met');
  const open = reasons.filter(({ why }) => why !== 'met');
  const list = (some: readonly Reason[]) => <ul>{some.map((reason) => <ReasonView key={reason.rule} reason={reason} on={on} setup={setup} />)}</ul>;
  return (
    <section class="verdict">
      <h3>The verdict</h3>
      <p class="headline"><HeadlineView of={strictest} on={on} /></p>
      <p>Judged on <Day day={on} />. The maker’s instruction comes first. <a href={replaceHref(setup.base)}>Who can replace the sling</a>. <a href={retireHref(setup.base)}>The same questions for one sling</a>.</p>
      {faults.map((fault) => <p key={fault.field + fault.why} class="fault">{faultText(fault)}</p>)}
      {milder && <p>To bring it to <HeadlineView of={milder.verdict} on={on} />, all of these must be known, and speak for the sling: {openText(milder.fields)}.</p>}
      {met.length > 0 && <><h4>What is known, strictest first</h4>{list(met)}</>}
      {open.length > 0 && (
        <details open={met.length === 0}>
          <summary>Counted against it, as not known (<span data-input>{open.length}</span>)</summary>
          {list(open)}
        </details>
      )}
      <p><a href="#cannot-see">What no verdict can see</a></p>
    </section>
  );
}

/** Events of the sling's life, each with its day as far as it is known. */
class Events extends Component<{ item: Item; typed: Typed; write: ItemHandlers['write'] }, { kind: RackEvent['kind'] }> {
  override state = { kind: EVENTS[0] as RackEvent['kind'] };

  override render() {
    const { item, typed, write } = this.props;
    const { events } = item.sling;
    const put = (next: readonly RackEvent[] | null): void => write('sling.events', next);
    return (
      <fieldset class="ticks" id="in-events">
        <legend>{FIELDS['sling.events']}</legend>
        <label class="tick"><input type="checkbox" checked={events === null} onChange={({ currentTarget }) => put(currentTarget.checked ? null : [])} />don’t know</label>
        {events?.length === 0 && <p class="hint">Nothing listed: none of these happened.</p>}
        {events?.map((event, at) => {
          const key = `${item.id} event ${at}`;
          const others = events.filter((_, other) => other !== at);
          const dated = (text: string): void => {
            takeOver(typed.faults, key, text, readDate, (when) => put(events.map((one, other) => (other === at ? { ...one, when } : one))));
            this.forceUpdate();
          };
          return (
            <div class="event" key={key}>
              <Text id={`in-event-${at}`} label={`When: ${EVENT_ANSWERS[event.kind]}`} value={event.when ? writePartDay(event.when) : ''} fault={typed.faults.get(key)} onWrite={dated} />
              <button type="button" onClick={() => { typed.faults.delete(key); put(others); document.getElementById('in-event-kind')?.focus(); }}>Take out<span class="hidden">: {EVENT_ANSWERS[event.kind]}</span></button>
            </div>
          );
        })}
        <div class="event">
          <div class="field">
            <label for="in-event-kind">Add what happened</label>
            <select id="in-event-kind" value={this.state.kind} onChange={({ currentTarget }) => this.setState({ kind: currentTarget.value as RackEvent['kind'] })}>
              {EVENTS.map((kind) => <option key={kind} value={kind}>{EVENT_ANSWERS[kind]}</option>)}
            </select>
          </div>
          <button type="button" onClick={() => put([...(events ?? []), { kind: this.state.kind, when: null }])}>Add</button>
        </div>
      </fieldset>
    );
  }
}

/** What is known of the item. Each field is one edit. */
class ItemFields extends Component<Pick<ItemProps, 'item' | 'setup' | 'typed' | 'handlers'>> {
  /** A field that is read from text. A text that cannot be read is kept as it was typed. */
  #field<T>(field: FieldKey, value: string, read: (text: string) => Read<T>, more: Partial<TextProps> = {}) {
    const { item, typed, handlers } = this.props;
    const key = `${item.id} ${field}`;
    const onWrite = (text: string): void => {
      takeOver(typed.faults, key, text, read, (value) => handlers.write(field, value));
      this.forceUpdate();
    };
    return <Text id={`in-${field.replaceAll('.', '-')}`} label={FIELDS[field] as string} value={value} fault={typed.faults.get(key)} onWrite={onWrite} {...more} />;
  }

  override render() {
    const { item, setup, typed, handlers: { write } } = this.props;
    const { sling } = item;
    const asIs = (text: string): Read<string> => ({ value: text });
    const number = (value: number | null): string => (value === null ? '' : String(value));
    const day = (value: PartDay | null): string => (value === null ? '' : writePartDay(value));
    const years = readNumber(MAKER_YEARS.low, MAKER_YEARS.high);
    const count = (text: string): Read<number> => {
      const got = readNumber(1, 999, true)(text);
      return 'why' in got ? got : { value: got.value ?? 1 };
    };
    return (
      <section class="known">
        <h3>What is known of it</h3>
        {this.#field('name', item.name, asIs, { maxLength: 200 })}
        <div class="pair">
          {this.#field('count', String(item.count), count, { unit: ' ' })}
          {this.#field('ratingKn', number(item.ratingKn), readNumber(1, 40), { unit: 'kN' })}
        </div>
        <Choice id="in-eye" label={FIELDS['eye'] as string} value={item.eye} answers={RACK_EYES.map((one) => [one, setup.eyes[one]])} onChoose={(value) => write('eye', value)} />
        <div class="pair">
          <Choice id="in-material" label={FIELDS['sling.material'] as string} value={sling.material} answers={RACK_MATERIALS.map((one) => [one, MATERIAL_ANSWERS[one] as string])} onChoose={(value) => write('sling.material', value)} />
          {this.#field('sling.widthMm', number(sling.widthMm), readNumber(WIDTH_RANGE_MM.low, WIDTH_RANGE_MM.high), { unit: 'mm' })}
        </div>
        <div class="pair">
          {this.#field('sling.made', day(sling.made), readDate)}
          {this.#field('sling.firstUse', day(sling.firstUse), readDate)}
        </div>
        <p class="hint" data-input>A year, a month or a day: 2019, 2019-04 or 2019-04-17. A year counts from its first day.</p>
        <Choice id="in-use" label={FIELDS['sling.use'] as string} value={sling.use} answers={RACK_USES.map((one) => [one, USE_ANSWERS[one]])} onChoose={(value) => write('sling.use', value)} />
        <Ticks id="in-exposures" legend={FIELDS['sling.exposures'] as string} value={sling.exposures} answers={EXPOSURES.map((one) => [one, EXPOSURE_ANSWERS[one]])} onTick={(value) => write('sling.exposures', value)} />
        <Events item={item} typed={typed} write={write} />
        <fieldset>
          <legend>What the maker prints</legend>
          <p class="hint">In the instruction. Where it is stricter, it decides.</p>
          {this.#field('sling.maker.retireBy', day(sling.maker.retireBy), readDate)}
          <div class="pair">
            {this.#field('sling.maker.yearsFromMade', number(sling.maker.yearsFromMade), years, { unit: 'years' })}
            {this.#field('sling.maker.yearsFromFirstUse', number(sling.maker.yearsFromFirstUse), years, { unit: 'years' })}
          </div>
        </fieldset>
        {this.#field('notes', item.notes, asIs, { isLong: true, maxLength: 4000 })}
      </section>
    );
  }
}

/** Inspections: a new one, and those there are, the newest first. */
class Inspections extends Component<Pick<ItemProps, 'item' | 'on' | 'typed' | 'handlers'>> {
  #draft(): Draft {
    const { typed, item, on } = this.props;
    return typed.drafts.get(item.id) ?? { day: on, findings: [], by: '', note: '' };
  }

  #change(part: Partial<Draft>): void {
    this.props.typed.drafts.set(this.props.item.id, { ...this.#draft(), ...part });
    this.forceUpdate();
  }

  override render() {
    const { item, handlers } = this.props;
    const { day, findings, by, note } = this.#draft();
    const isDay = /^\d{4}-\d{2}-\d{2}$/.test(day);
    return (
      <section class="looks">
        <h3 id="looks-title" tabIndex={-1}>Inspections</h3>
        <form class="look" onSubmit={(event) => {
          event.preventDefault();
          if (isDay) handlers.inspect(this.#draft());
          else document.getElementById('in-look-day')?.focus();
        }}>
          <div class="field">
            <label for="in-look-day">Day of a new inspection</label>
            <input id="in-look-day" type="date" required value={day} onInput={({ currentTarget }) => this.#change({ day: currentTarget.value })} />
          </div>
          <Ticks id="in-findings" legend="Run the whole sling through your fingers, in good light. Found:" value={findings} isKnown answers={FINDINGS.map((one) => [one, FINDING_ANSWERS[one]])} onTick={(value) => this.#change({ findings: value ?? [] })} />
          <div class="field">
            <label for="in-look-by">By</label>
            <input id="in-look-by" type="text" maxLength={200} value={by} onInput={({ currentTarget }) => this.#change({ by: currentTarget.value })} />
          </div>
          <div class="field">
            <label for="in-look-note">Note</label>
            <textarea id="in-look-note" maxLength={4000} value={note} onInput={({ currentTarget }) => this.#change({ note: currentTarget.value })} />
          </div>
          <p><button type="submit">Add the inspection</button></p>
        </form>
        {item.inspections.length > 0 && (
          <>
            <h4>Earlier ones</h4>
            <ul>
              {item.inspections.toReversed().map((look) => (
                <li key={look.id}>
                  <Day day={look.day} />: {findingsText(look.findings)}<span data-input>{look.by && `, by ${look.by}`}{look.note && `. ${look.note}`}</span>{' '}
                  <button type="button" class="link" onClick={() => handlers.takeOut(look)}>Take out<span class="hidden"> the inspection of {look.day}</span></button>
                </li>
              ))}
            </ul>
          </>
        )}
      </section>
    );
  }
}

/** What can be done with the item as a whole. */
class Actions extends Component<Pick<ItemProps, 'item' | 'handlers'>, { n: string }> {
  override state = { n: '1' };

  override render() {
    const { item, handlers } = this.props;
    const n = Number(this.state.n);
    const mayTake = Number.isInteger(n) && n >= 1 && n < item.count;
    return (
      <section class="actions">
        <h3>What else</h3>
        {item.count > 1 && (
          <form class="entry" onSubmit={(event) => { event.preventDefault(); if (mayTake) handlers.split(n); }}>
            <label for="in-split">One of several had a life of its own? Take</label>
            <input id="in-split" type="text" class="short" value={this.state.n} onInput={({ currentTarget }) => this.setState({ n: currentTarget.value })} />
            <button type="submit" aria-disabled={!mayTake}>into an item of their own</button>
          </form>
        )}
        <p><button type="button" onClick={handlers.renew}>It has a new sling</button> <span class="hint">Clears what was known of the old one.</span></p>
        <p><button type="button" id="take-off" onClick={() => handlers.remove(!item.removed)}>{item.removed ? 'Put it back on the rack' : 'Take it off the rack'}</button> <span class="hint">It stays in the register.</span></p>
      </section>
    );
  }
}

/** The view of one item. */
export function ItemView(props: ItemProps) {
  const { item } = props;
  return (
    <article class="item">
      <p><a href="#rack">Back to the rack</a></p>
      <h2 id="item-title" tabIndex={-1}><span data-input>{itemName(item)}</span><Count of={item.count} />{item.removed && ' (off the rack)'}</h2>
      <div class="columns">
        <div>
          <VerdictBox {...props} />
          <Inspections key={`looks-${item.id}`} {...props} />
        </div>
        <div>
          <ItemFields key={`fields-${item.id}`} {...props} />
          <Actions key={`actions-${item.id}`} {...props} />
        </div>
      </div>
    </article>
  );
}
