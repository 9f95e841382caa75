/**
 * The register of a rack in the browser: state in, engine call, markup out. Nothing leaves the device. What a view needs
 * beyond the list comes when it is asked for, or when the browser is idle.
 */
import { Component, render } from 'preact';
import type { FilesProps, Refused } from '../components/rack/files.tsx';
import type { ItemHandlers, Typed } from '../components/rack/item.tsx';
import { Day, type GroupName, itemHash, RackList, ROWS_AT_ONCE } from '../components/rack/list.tsx';
import { exampleAddress, type RackSetup } from '../components/rack/setup.ts';
import { fieldName } from '../components/rack/words.ts';
import { headlineText } from '../components/retirement/words.ts';
import { byDue, type Due } from '../rack/due.ts';
import { type History, recorded, redone, startHistory, undone } from '../rack/history.ts';
import { itemName } from '../rack/item-words.ts';
import type { Choice, Merge } from '../rack/merge.ts';
import { addInspection, addItems, changeInspection, changeItem, editsSince, emptyRegister, isUntouched, onRack, removeItem, splitItem, writeFields } from '../rack/register.ts';
import { REGISTER_SCHEMA } from '../rack/schema.ts';
import { shapeFaults } from '../rack/shape.ts';
import { itemReasons, itemVerdict, type Rules, slingHistory } from '../rack/sling-history.ts';
import type { By, Item, Register } from '../rack/types.ts';
import type { Reason } from '../retirement/verdict.ts';
import type { Incoming } from './rack-exchange.ts';
import { drawName, inWords, type Kept, RackStore, type Wanted } from './rack-store.ts';
import { save } from './save-file.ts';

const setup = JSON.parse(document.getElementById('rack-setup')?.textContent ?? '') as RackSetup;
const rules: Rules = Object.fromEntries(Object.entries(setup.rules).map(([id, rule]) => [id, { ...rule, figures: [] }]));

/** Edits after which the page asks for a new file. */
const EDITS_PER_FILE = 20;

/** What comes on demand. */
type More = typeof import('./rack-more.ts');

/** A copy that came from elsewhere and waits for the reader's choices. */
interface Pending { from: string; name: string; mergeNow: (mine: Register, by: By) => Merge; isWindow: Kept | null }
type View = { is: 'list' | 'add' | 'files' | 'merge' } | { is: 'item'; id: string };
type Storage = { is: 'waiting' } | { is: 'kept' } | { is: 'refused'; why: string } | { is: 'gone' } | { is: 'unreadable'; why: string; raw: unknown };

/** Today where the reader is; never a day before the evidence, for a clock that is behind would make verdicts milder. */
function today(): { on: string; isBehind: boolean } {
  const now = new Date();
  const day = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((n) => String(n).padStart(2, '0')).join('-');
  return day < setup.asOf ? { on: setup.asOf, isBehind: true } : { on: day, isBehind: false };
}

const moment = (): string => `${new Date().toISOString().slice(0, 19)}Z`;
const focus = (id: string): void => { requestAnimationFrame(() => document.getElementById(id)?.focus()); };
const plural = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

class Rack extends Component {
  #own: History | null = null;
  #example: History | null = null;
  #exported: Register['seen'] | null = null;
  #storage: Storage = { is: 'waiting' };
  #isReady = false;
  #copy = '';
  readonly #exampleCopy = drawName();
  #view: View = { is: 'list' };
  #pending: Pending | null = null;
  #choices: Readonly<Record<string, Choice>> = {};
  #refused: Refused | null = null;
  #pasted = '';
  #lines = '';
  #said = '';
  #filter = '';
  #shown: Record<GroupName, number> = { now: ROWS_AT_ONCE, look: ROWS_AT_ONCE, later: ROWS_AT_ONCE };
  readonly #typed: Typed = { faults: new Map(), drafts: new Map() };
  #more: More | null = null;
  #day = today();
  #reasons = new WeakMap<Item, readonly Reason[]>();
  #ordered: { register: Register; on: string; due: Due[] } | null = null;

  readonly #store = new RackStore({
    onKept: () => {
      const isFirst = this.#storage.is !== 'kept';
      this.#storage = { is: 'kept' };
      // Whether the browser agrees is its own affair; the page says what may be deleted either way.
      if (isFirst) navigator.storage?.persist?.().catch(() => {});
      this.forceUpdate();
    },
    onOther: (kept) => this.#joined(kept),
    onGone: () => { this.#storage = { is: 'gone' }; this.forceUpdate(); },
    onRefused: (why) => { this.#storage = { is: 'refused', why }; this.forceUpdate(); },
  });

  get #history(): History | null { return this.#example ?? this.#own; }
  get #by(): By { return { copy: this.#example ? this.#exampleCopy : this.#copy, at: moment() }; }

  override componentDidMount(): void {
    this.#open().catch((error: unknown) => this.#fail(error));
    addEventListener('hashchange', () => this.#route());
    addEventListener('beforeprint', () => this.#drawSheet());
    addEventListener('afterprint', () => this.#clearSheet());
    // A field that is still open is taken over before the window goes.
    addEventListener('pagehide', () => document.activeElement?.dispatchEvent(new Event('change', { bubbles: true })));
    addEventListener('beforeunload', (event) => {
      const isLost = this.#own !== null && this.#storage.is !== 'kept' && this.#unsaved > 0;
      if (isLost || !this.#store.isSettled) event.preventDefault();
    });
    document.addEventListener('visibilitychange', () => {
      const now = today();
      if (document.hidden || now.on === this.#day.on) return;
      this.#day = now;
      this.#reasons = new WeakMap();
      this.forceUpdate();
    });
    globalThis.requestIdleCallback?.(() => { this.#load().catch(() => {}); });
  }

  /** Takes up what this browser keeps; where it keeps nothing or refuses, the page begins without. */
  async #open(): Promise<void> {
    let kept: unknown;
    try {
      kept = await this.#store.load();
    } catch (error) {
      this.#storage = { is: 'refused', why: inWords(error) };
    }
    const good = kept !== undefined && this.#isReadable(kept as Kept) ? (kept as Kept) : null;
    this.#copy = await this.#store.begin(good);
    if (good) {
      this.#own = startHistory(good.register);
      this.#exported = good.exported;
      this.#storage = { is: 'kept' };
    }
    this.#isReady = true;
    this.#route();
    document.documentElement.classList.add('rack-ready');
  }

  /** Whether a record is a register. One that is not is left as it is, and nothing is written over it. */
  #isReadable({ register }: Kept): boolean {
    const [fault] = shapeFaults(REGISTER_SCHEMA, register);
    if (fault) this.#storage = { is: 'unreadable', why: `${fault.pointer} ${fault.why}`, raw: register };
    return !fault;
  }

  /** Everything but the list. */
  async #load(): Promise<More> {
    this.#more ??= await import('./rack-more.ts');
    return this.#more;
  }

  #fail(error: unknown): void {
    this.#say(`That did not work (${inWords(error)}). Try again.`);
  }

  #say(said: string): void {
    this.#said = said;
    this.forceUpdate();
  }

  /** Reads the view from the address. Other anchors of the page leave the view as it is. */
  #route(isFirst = !this.#isReady): void {
    const hash = location.hash.slice(1);
    const item = /^item-(.+)$/.exec(hash)?.[1];
    const named = (['add', 'files', 'merge'] as const).find((one) => one === hash);
    if (hash !== '' && hash !== 'rack' && !item && !named) {
      this.forceUpdate();
      return;
    }
    const view: View = item && this.#history?.register.items.some(({ id }) => id === item) ? { is: 'item', id: item } : { is: named === 'merge' && !this.#pending ? 'list' : (named ?? 'list') };
    const before = this.#view;
    this.#view = view;
    Promise.resolve(view.is === 'list' || this.#load()).then(() => {
      this.forceUpdate(() => {
        if (isFirst || this.#view !== view) return;
        if (view.is !== 'list') return focus(`${view.is}-title`);
        focus(before.is === 'item' && document.getElementById(`row-${before.id}`) ? `row-${before.id}` : 'rack-title');
      });
    }).catch((error: unknown) => this.#fail(error));
    this.forceUpdate();
  }

  #go(hash: string): void {
    if (location.hash === hash) this.#route();
    else location.hash = hash;
  }

  /** Edits that no file has. */
  get #unsaved(): number { return this.#own ? editsSince(this.#own.register, this.#exported ?? {}) : 0; }

  #set(history: History): void {
    if (this.#example) this.#example = history;
    else {
      this.#own = history;
      this.#store.keep({ register: history.register, exported: this.#exported });
    }
  }

  /** One edit: the register after it, what it did in words, and what is said of it. @returns whether anything changed */
  #edit(change: (register: Register, by: By) => Register, label: string, said = `${label}.`): boolean {
    const now = this.#history ?? startHistory(emptyRegister());
    try {
      const next = change(now.register, this.#by);
      if (next === now.register) return false;
      this.#set(recorded(now, next, label));
      this.#said = said;
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      this.#said = `Not taken over: ${error.message}.`;
    }
    this.forceUpdate();
    return true;
  }

  #step(direction: 'undo' | 'redo'): void {
    const now = this.#history;
    const label = now?.[direction].at(-1)?.label;
    const next = now && (direction === 'undo' ? undone : redone)(now, this.#by);
    if (!next) return;
    this.#set(next);
    // What an undo takes back is no longer typed anew over it.
    this.#typed.faults.clear();
    if (this.#view.is === 'item' && !next.register.items.some(({ id }) => id === (this.#view as { id: string }).id)) this.#go('#rack');
    this.#say(`${direction === 'undo' ? 'Taken back' : 'Done again'}: ${label}.`);
  }

  /** Another window's copy and this one's made one. @returns what to keep, or null where the reader has to choose */
  async #joined(kept: Kept): Promise<Wanted | null> {
    if (!this.#isReadable(kept)) {
      this.forceUpdate();
      return null;
    }
    const mine = this.#own?.register;
    if (!mine || editsSince(mine, kept.register.seen) === 0) return this.#take(kept.register, kept);
    const { merge } = await this.#load();
    const merged = merge(this.#own?.register ?? mine, kept.register);
    if (merged.ok && merged.conflicts.length === 0) return this.#take(merged.settled(), kept);
    this.#wait({ from: 'another window', name: 'another window', mergeNow: (now) => merge(now, kept.register), isWindow: kept });
    return null;
  }

  #take(register: Register, { exported, lineage, copies }: Kept): Wanted {
    if (!this.#own) {
      this.#own = startHistory(register);
      this.#storage = { is: 'kept' };
      this.#store.begin({ lineage, copies, register, exported, revision: 0 }).then((copy) => { this.#copy = copy; }).catch(() => {});
    } else this.#own = { ...this.#own, register };
    this.#exported = exported ?? this.#exported;
    if (!this.#pending?.isWindow) this.#said = 'Another window’s changes are here.';
    this.forceUpdate();
    return { register, exported: this.#exported };
  }

  #wait(pending: Pending): void {
    this.#pending = pending;
    this.#choices = {};
    this.#load().then(() => this.#go('#merge')).catch((error: unknown) => this.#fail(error));
  }

  /** Merges as the reader has chosen. Conflicts that came up since then are asked, too. */
  #settle(): void {
    const [pending, history] = [this.#pending, this.#history];
    if (!pending || !history || !this.#more) return;
    const merged = pending.mergeNow(history.register, this.#by);
    if (!merged.ok) {
      this.#say(merged.why);
      return;
    }
    const { conflictKey } = this.#more;
    const chosen = merged.conflicts.map((one) => this.#choices[conflictKey(one)]);
    if (chosen.includes(undefined)) {
      this.forceUpdate();
      return;
    }
    this.#pending = null;
    if (pending.isWindow) this.#store.seen(pending.isWindow);
    const next = merged.settled(chosen as Choice[], this.#by);
    if (next === history.register) this.#set(history);
    else this.#set(recorded(history, next, `Merge with ${pending.name}`));
    this.#said = `Merged with ${pending.name}.`;
    this.#go('#rack');
  }

  /** Takes a file or text in. Nothing changes unless all of it can be read. */
  async #bring(name: string, content: string | Uint8Array): Promise<void> {
    const { readImport } = await this.#load();
    const read = readImport(content);
    const refuse = (refused: Omit<Refused, 'name'>): void => {
      this.#refused = { name, ...refused };
      this.#say(`Not imported: ${name}.`);
      focus('refused');
    };
    if (!read.ok) return refuse({ faults: read.faults, why: null });
    const incoming = read.value;
    const isEmpty = !this.#example && (!this.#own || isUntouched(this.#own.register));
    if (isEmpty && incoming.invented !== null) return this.#show(incoming, `${name} is an invented example. It is open, and nothing of it is kept.`);
    const now = this.#history ?? startHistory(emptyRegister());
    const merged = incoming.merge(now.register, this.#by);
    if (!merged.ok) return refuse({ faults: null, why: merged.why });
    this.#refused = null;
    if (merged.conflicts.length > 0) return this.#wait({ from: name, name, mergeNow: incoming.merge, isWindow: null });
    const next = merged.settled();
    if (isEmpty) {
      // What a file holds already needs no other file.
      if (incoming.isWhole) this.#exported = next.seen;
      this.#set(startHistory(next));
      return this.#done(`${name} is open: ${plural(onRack(next).length, 'item')} on the rack.`);
    }
    if (next !== now.register) this.#set(recorded(now, next, `Import of ${name}`));
    this.#done(`${name} is merged: ${plural(next.items.length - now.register.items.length, 'new item')}.`);
  }

  /** Opens an example. It stands apart from the reader's own register. */
  #show(incoming: Incoming, said: string): void {
    const merged = incoming.merge(emptyRegister(incoming.invented), { copy: this.#exampleCopy, at: moment() });
    if (!merged.ok) return;
    this.#example = startHistory(merged.settled());
    this.#refused = null;
    this.#done(said);
  }

  #done(said: string): void {
    this.#pasted = '';
    this.#said = said;
    this.#go('#rack');
    this.forceUpdate();
  }

  async #write(kind: 'json' | 'csv' | 'ics'): Promise<void> {
    const { registerCsv, registerJson, registerCalendar } = await this.#load();
    const register = this.#history?.register;
    if (!register) return;
    const { on } = this.#day;
    const text = kind === 'json' ? registerJson(register) : kind === 'csv' ? registerCsv(register) : registerCalendar(register, this.#verdictOf, moment(), on);
    // No calendar is empty, and nothing offers one of an empty rack.
    if (text === null) return;
    const name = `${register.invented ? 'invented-example-' : ''}rack-${on}.${kind}`;
    save(name, text, kind === 'ics' ? 'text/calendar' : undefined);
    if (kind === 'json' && !this.#example && this.#own) {
      this.#exported = register.seen;
      this.#store.keep({ register: this.#own.register, exported: this.#exported });
    }
    this.#say(`Saved as ${name}.`);
  }

  readonly #reasonsOf = (item: Item): readonly Reason[] => {
    const known = this.#reasons.get(item) ?? itemReasons(rules, item, this.#day.on);
    this.#reasons.set(item, known);
    return known;
  };
  readonly #verdictOf = (item: Item) => this.#reasonsOf(item)[0]?.asks ?? null;

  #due(register: Register): Due[] {
    const { on } = this.#day;
    if (this.#ordered?.register !== register || this.#ordered.on !== on) this.#ordered = { register, on, due: byDue(register, this.#verdictOf) };
    return this.#ordered.due;
  }

  #drawSheet(): void {
    const register = this.#history?.register;
    const root = document.getElementById('sheet-root');
    if (!register || !root || !this.#more) return;
    const { Sheet } = this.#more;
    document.documentElement.classList.add('has-sheet');
    render(<Sheet due={this.#due(register)} reasonsOf={this.#reasonsOf} on={this.#day.on} rules={setup.rules} invented={register.invented} />, root);
  }

  #clearSheet(): void {
    document.documentElement.classList.remove('has-sheet');
    render(null, document.getElementById('sheet-root') as Element);
  }

  async #print(): Promise<void> {
    await this.#load();
    print();
  }

  async #openExample(): Promise<void> {
    const [answer, { readImport }] = await Promise.all([fetch(exampleAddress(setup.base)), this.#load()]);
    const read = readImport(await answer.text());
    if (!read.ok) throw new Error('the example cannot be read');
    this.#show(read.value, 'The example rack is open. It is invented, and nothing of it is kept.');
    focus('rack-title');
  }

  #closeExample(): void {
    this.#example = null;
    this.#typed.faults.clear();
    this.#typed.drafts.clear();
    this.#done('The example is closed.');
    focus(this.#own ? 'rack-title' : 'start-title');
  }

  #startEmpty(): void {
    this.#example = null;
    this.#own = startHistory(emptyRegister());
    this.#done('An empty register.');
    focus('rack-title');
  }

  async #forget(): Promise<void> {
    await this.#store.forget();
    this.#own = null;
    this.#exported = null;
    this.#copy = await this.#store.begin(null);
    this.#storage = { is: 'waiting' };
    this.#done('The register is deleted from this browser.');
    focus('start-title');
  }

  #addOne(): void {
    const known = new Set(this.#history?.register.items.map(({ id }) => id));
    this.#edit((register, by) => addItems(register, by, [{}]), 'Add a device');
    const added = this.#history?.register.items.find(({ id }) => !known.has(id));
    if (added) this.#go(itemHash(added.id));
  }

  #handlersOf(item: Item): ItemHandlers {
    const name = itemName(item);
    return {
      write: (field, value) => {
        this.#edit((register, by) => writeFields(register, by, [{ item: item.id, field, value }]), `${name}: ${fieldName(field)}`, '');
        const now = this.#history?.register.items.find(({ id }) => id === item.id);
        const verdict = now && this.#verdictOf(now);
        if (verdict) this.#say(`${name}: ${fieldName(field)} changed. ${headlineText(verdict, this.#day.on)}.`);
      },
      inspect: (draft) => {
        if (this.#edit((register, by) => addInspection(register, by, item.id, draft), `${name}: inspection of ${draft.day}`, `Inspection of ${draft.day} added to ${name}.`)) this.#typed.drafts.delete(item.id);
        focus('looks-title');
        this.forceUpdate();
      },
      takeOut: ({ id, day }) => {
        this.#edit((register, by) => changeInspection(register, by, item.id, id, null), `${name}: inspection of ${day} taken out`);
        focus('looks-title');
      },
      remove: (removed) => { this.#edit((register, by) => removeItem(register, by, item.id, removed), `${name}: ${removed ? 'taken off the rack' : 'put back on the rack'}`); },
      split: (n) => {
        const known = new Set(this.#history?.register.items.map(({ id }) => id));
        this.#edit((register, by) => splitItem(register, by, item.id, n), `${name}: ${plural(n, 'device')} made an item of their own`);
        const taken = this.#history?.register.items.find(({ id }) => !known.has(id));
        if (taken) this.#go(itemHash(taken.id));
      },
      renew: () => {
        const fresh = { material: null, widthMm: null, made: null, firstUse: null, exposures: [], events: [] };
        this.#edit((register, by) => changeItem(register, by, item.id, { sling: fresh }), `${name}: a new sling`, `${name} has a new sling. Enter what its label says.`);
        focus('in-material');
      },
    };
  }

  /** What stands above everything else: what is not kept, what waits, and a clock that is behind. */
  #notes() {
    const [storage, unsaved] = [this.#storage, this.#unsaved];
    const out = <button type="button" onClick={() => { this.#write('json').catch((error: unknown) => this.#fail(error)); }}>Save as a file (JSON)</button>;
    return (
      <>
        {this.#day.isBehind && <p class="note">The clock of this device is behind. Verdicts count from <Day day={this.#day.on} />, the day of our evidence.</p>}
        {this.#example && (
          <div class="note invented"><p><b>Invented example.</b> {this.#example.register.invented} <button type="button" onClick={() => this.#closeExample()}>{this.#own ? 'Back to my own rack' : 'Close the example'}</button>{!this.#own && <> <button type="button" onClick={() => this.#startEmpty()}>Start empty</button></>}</p></div>
        )}
        {storage.is === 'refused' && <div class="note warn"><p><b>This browser does not keep the register</b> (<span data-input>{storage.why}</span>). Everything works, but only in this window. Export before you close it. {this.#own && out}</p></div>}
        {storage.is === 'gone' && (
          <div class="note warn"><p><b>Another window has deleted the register from this browser.</b> What you see is only here. {out} <button type="button" onClick={() => { this.#store.begin(null).then((copy) => { this.#copy = copy; if (this.#own) this.#set(this.#own); }).catch((error: unknown) => this.#fail(error)); }}>Keep it in this browser again</button></p></div>
        )}
        {storage.is === 'unreadable' && (
          <div class="note warn"><p><b>What this browser keeps cannot be read here</b> (<span data-input>{storage.why}</span>). Reload the page first; nothing is overwritten. <button type="button" onClick={() => save('rack-as-kept.json', JSON.stringify(storage.raw, null, 1))}>Save it as it is</button></p></div>
        )}
        {this.#pending && this.#view.is !== 'merge' && <div class="note warn"><p><b>Two copies differ.</b> {this.#pending.isWindow ? 'What you change here is not kept until you have chosen.' : 'The import waits.'} <a href="#merge">Choose</a></p></div>}
        {!this.#example && storage.is === 'kept' && unsaved > 0 && (this.#exported === null || unsaved >= EDITS_PER_FILE) && (
          <div class="note"><p>{this.#exported === null ? 'Kept in this browser. No file of it exists yet, and a browser can lose what it keeps.' : <><span data-input>{unsaved}</span> edits are in no file yet.</>} {out}</p></div>
        )}
      </>
    );
  }

  #start() {
    return (
      <section class="start">
        <h2 id="start-title" tabIndex={-1}>Begin</h2>
        <p class="choices">
          <button type="button" class="main" onClick={() => { this.#openExample().catch((error: unknown) => this.#fail(error)); }}>Try with an example rack</button>
          <button type="button" class="main" onClick={() => this.#startEmpty()}>Start empty</button>
          <a class="button" href="#files">Open a file</a>
        </p>
      </section>
    );
  }

  #tools({ undo, redo }: History) {
    const last = (steps: History['undo']) => steps.at(-1)?.label;
    const tool = (direction: 'undo' | 'redo', word: string, label: string | undefined) =>
      <button type="button" id={direction} aria-disabled={label === undefined} onClick={() => this.#step(direction)}>{word}{label !== undefined && <span class="what" data-input>: {label}</span>}</button>;
    return <p class="tools undo">{tool('undo', 'Undo', last(undo))} {tool('redo', 'Redo', last(redo))}</p>;
  }

  #list(history: History) {
    const all = this.#due(history.register);
    const find = this.#filter.trim().toLowerCase();
    const due = find === '' ? all : all.filter(({ item }) => itemName(item).toLowerCase().includes(find));
    const off = history.register.items.filter(({ removed }) => removed);
    const devices = all.reduce((sum, { item }) => sum + item.count, 0);
    return (
      <section class="list">
        <h2 id="rack-title" tabIndex={-1}>{this.#example ? 'The example rack' : 'My rack'}</h2>
        <p class="tools">
          <a class="button" href="#add">Add several</a> <button type="button" onClick={() => this.#addOne()}>Add one</button>{' '}
          {all.length > 0 && (
            <>
              <button type="button" onClick={() => { this.#print().catch((error: unknown) => this.#fail(error)); }}>Print sheet</button>{' '}
              <button type="button" onClick={() => { this.#write('ics').catch((error: unknown) => this.#fail(error)); }}>Calendar file</button>{' '}
            </>
          )}
          <a class="button" href="#files">Export and import</a>
        </p>
        {all.length === 0 && off.length === 0 && <p>Nothing is on it yet. <a href="#add">Add several</a> takes one line for each device.</p>}
        {all.length > 0 && (
          <>
            <p><span data-input>{devices}</span> {devices === 1 ? 'device' : 'devices'}{devices !== all.length && <> in <span data-input>{all.length}</span> items</>}, judged on <Day day={this.#day.on} />. What is not known counts against the sling.</p>
            {all.length > 9 && <div class="field find"><label for="find">Find by name</label><input id="find" type="search" value={this.#filter} onInput={({ currentTarget }) => { this.#filter = currentTarget.value; this.forceUpdate(); }} />{find !== '' && <span role="status"><span data-input>{due.length}</span> found</span>}</div>}
            <RackList due={due} reasonsOf={this.#reasonsOf} on={this.#day.on} rules={setup.rules} shown={this.#shown} onMore={(group) => {
              const next = due.filter(({ item }) => !document.getElementById(`row-${item.id}`));
              this.#shown[group] += ROWS_AT_ONCE;
              this.forceUpdate(() => { const first = next.find(({ item }) => document.getElementById(`row-${item.id}`)); if (first) focus(`row-${first.item.id}`); });
            }} />
          </>
        )}
        {off.length > 0 && (
          <details class="off">
            <summary>Off the rack <span class="count" data-input>{off.length}</span></summary>
            <ul>{off.slice(0, this.#shown.later).map((item) => <li key={item.id}><a href={itemHash(item.id)} id={`row-${item.id}`} data-input>{itemName(item)}</a></li>)}</ul>
          </details>
        )}
      </section>
    );
  }

  #body() {
    const [view, history, more] = [this.#view, this.#history, this.#more];
    const fail = (error: unknown): void => this.#fail(error);
    if (view.is === 'files' && more) {
      const props: FilesProps = {
        hasRegister: history !== null, isExample: this.#example !== null,
        refused: this.#refused, pasted: this.#pasted,
        onPasted: (text) => { this.#pasted = text; this.forceUpdate(); },
        onFile: (file) => { file.arrayBuffer().then((bytes) => this.#bring(file.name, new Uint8Array(bytes))).catch(fail); },
        onText: (text) => { this.#bring('the pasted text', text).catch(fail); },
        onExport: (kind) => { this.#write(kind).catch(fail); },
        onForget: () => { this.#forget().catch(fail); },
        onExample: () => { this.#openExample().catch(fail); },
      };
      return <more.FilesView {...props} />;
    }
    if (!history) return this.#start();
    if (view.is === 'add' && more) {
      return <more.AddView text={this.#lines} onText={(text) => { this.#lines = text; this.forceUpdate(); }} onAdd={(drafts, left) => {
        this.#edit((register, by) => addItems(register, by, drafts), `Add ${plural(drafts.length, 'item')}`, `${plural(drafts.length, 'item')} added.${left ? ' What was not understood is still in the box.' : ''}`);
        this.#lines = left;
        if (left) { this.forceUpdate(); focus('in-lines'); } else this.#go('#rack');
      }} />;
    }
    if (view.is === 'merge' && more && this.#pending) {
      const pending = this.#pending;
      const merged = pending.mergeNow(history.register, this.#by);
      const cancel = (): void => { if (!pending.isWindow) { this.#pending = null; this.#said = 'Not merged. The register is as it was.'; } this.#go('#rack'); };
      return <more.ConflictsView eyes={setup.eyes} from={pending.from} conflicts={merged.ok ? merged.conflicts : []} choices={this.#choices} cancel={pending.isWindow ? 'Decide later' : 'Do not merge'}
        onChoose={(choices) => { this.#choices = choices; this.forceUpdate(); }} onSettle={() => this.#settle()} onCancel={cancel} />;
    }
    const item = view.is === 'item' && history.register.items.find(({ id }) => id === view.id);
    if (item && more) {
      const { on } = this.#day;
      return <more.ItemView item={item} verdict={itemVerdict(rules, item, on)} faults={slingHistory(item, on).faults} on={on} setup={setup} typed={this.#typed} handlers={this.#handlersOf(item)} />;
    }
    return view.is === 'list' || view.is === 'merge' ? this.#list(history) : <p>One moment.</p>;
  }

  override render() {
    if (!this.#isReady) return <p>Opening the register.</p>;
    const history = this.#history;
    return (
      <div class="rack">
        {this.#notes()}
        {history && this.#tools(history)}
        <p class="said" role="status" data-input>{this.#said}</p>
        {this.#body()}
      </div>
    );
  }
}

const root = document.getElementById('rack-root') as Element;
root.replaceChildren();
render(<Rack />, root);
