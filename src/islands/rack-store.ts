/**
 * Where a register is kept on the reader's device: one record in the browser's own database, and nothing else. Windows that
 * have it open tell each other of every write, and a write first reads, in the same transaction, whether another came between.
 */
import type { Register } from '../rack/types.ts';
import { KEY, NAME, openKept, STORE } from './kept-register.ts';

/** What is kept. */
export interface Kept {
  /** Names this register on this device: drawn once, so that another one that takes its place is told apart. */
  lineage: string;
  /** Names under which windows have edited it here, one for each window that was open at a time. */
  copies: readonly string[];
  register: Register;
  /** `seen` of the register when it was last saved as a file; null where it never was. */
  exported: Register['seen'] | null;
  /** Counts the writes. */
  revision: number;
}

/** What a window wants to keep. */
export type Wanted = Pick<Kept, 'register' | 'exported'>;

/** What became of a write. `differs`: another window wrote first, and nothing was overwritten. */
type Outcome = { is: 'kept'; revision: number } | { is: 'differs'; kept: Kept } | { is: 'gone' };

/** Runs one transaction; it counts once the browser says that it is complete. */
async function transact<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore, result: (value: T) => void, fail: (error: unknown) => void) => void): Promise<T | undefined> {
  const database = await openKept();
  try {
    return await new Promise<T | undefined>((done, fail) => {
      let value: T | undefined;
      const transaction = database.transaction(STORE, mode);
      work(transaction.objectStore(STORE), (result) => { value = result; }, fail);
      transaction.oncomplete = () => done(value);
      transaction.onabort = () => fail(transaction.error);
    });
  } finally {
    database.close();
  }
}

/** A name of letters and digits that nobody else draws. */
export const drawName = (): string => `k${[...crypto.getRandomValues(new Uint32Array(2))].map((n) => n.toString(36)).join('').slice(0, 11)}`;

/** Takes a lock for as long as the window is open; false where another window has it. */
function lock(name: string): Promise<boolean> {
  return new Promise((done) => {
    navigator.locks.request(name, { ifAvailable: true }, (got) => {
      done(got !== null);
      return got ? new Promise(() => {}) : undefined;
    }).catch(() => done(false));
  });
}

/** A name to edit under that no other open window uses: edits are told apart by it. */
export async function takeCopy(copies: readonly string[]): Promise<string> {
  if (!('locks' in navigator)) return drawName();
  for (const copy of copies) if (await lock(`${NAME} ${copy}`)) return copy;
  const fresh = drawName();
  await lock(`${NAME} ${fresh}`);
  return fresh;
}

/** What the page does when something happens to the record. */
export interface Listener {
  onKept: () => void;
  /** Another window wrote. @returns what to write instead, or null where the reader has to choose first */
  onOther: (kept: Kept) => Promise<Wanted | null>;
  /** Another window deleted the register. */
  onGone: () => void;
  onRefused: (why: string) => void;
}

/** An error in words, for the reader. */
export const inWords = (error: unknown): string => (error instanceof Error ? error.message : '') || 'no reason given';

/** One window's hand on the record. */
export class RackStore {
  #revision: number | null = null;
  #lineage = '';
  #copy = '';
  #wanted: Wanted | null = null;
  #isBusy = false;
  #hasNews = false;
  readonly #channel = new BroadcastChannel(NAME);
  readonly #listener: Listener;

  constructor(listener: Listener) {
    this.#listener = listener;
    this.#channel.addEventListener('message', () => { this.#refresh().catch(() => {}); });
  }

  /** Reads what is kept, as it is. @throws where the browser refuses */
  async load(): Promise<unknown> {
    return transact<unknown>('readonly', (store, result) => {
      const request = store.get(KEY);
      request.onsuccess = () => result(request.result);
    });
  }

  /** Goes on with a record that was read, or begins a new one with null. */
  async begin(kept: Kept | null): Promise<string> {
    this.#revision = kept?.revision ?? null;
    this.#lineage = kept?.lineage ?? drawName();
    this.#copy = await takeCopy(kept?.copies ?? []);
    return this.#copy;
  }

  /** Takes what another window has written as seen. */
  seen(kept: Kept): void {
    this.#revision = kept.revision;
    this.#lineage = kept.lineage;
  }

  /** Keeps the newest state; what is asked for while a write is under way is written after it. */
  keep(wanted: Wanted): void {
    this.#wanted = wanted;
    if (!this.#isBusy) this.#work().catch((error: unknown) => this.#listener.onRefused(inWords(error)));
  }

  /** Whether everything that was to be kept is. */
  get isSettled(): boolean { return !this.#isBusy && this.#wanted === null; }

  async #work(): Promise<void> {
    this.#isBusy = true;
    try {
      while (this.#wanted) {
        const now = this.#wanted;
        this.#wanted = null;
        const outcome = await this.#write(now);
        if (outcome.is === 'gone') this.#listener.onGone();
        else if (outcome.is === 'kept') {
          this.#revision = outcome.revision;
          this.#channel.postMessage('written');
          if (!this.#wanted) this.#listener.onKept();
        } else {
          const merged = await this.#listener.onOther(outcome.kept);
          if (merged) this.seen(outcome.kept);
          this.#wanted = merged;
        }
      }
    } finally {
      this.#isBusy = false;
    }
    if (this.#hasNews) await this.#refresh();
  }

  async #write(wanted: Wanted): Promise<Outcome> {
    const outcome = await transact<Outcome>('readwrite', (store, result, fail) => {
      const request = store.get(KEY);
      request.onsuccess = () => {
        const now = request.result as Kept | undefined;
        if (now && (now.revision !== this.#revision || now.lineage !== this.#lineage)) {
          const isOurs = this.#revision === null || now.lineage === this.#lineage;
          return result(isOurs ? { is: 'differs', kept: now } : { is: 'gone' });
        }
        if (!now && this.#revision !== null) return result({ is: 'gone' });
        const revision = (this.#revision ?? 0) + 1;
        const copies = [...new Set([...(now?.copies ?? []), this.#copy])];
        try {
          store.put({ ...wanted, lineage: this.#lineage, copies, revision } satisfies Kept, KEY);
          result({ is: 'kept', revision });
        } catch (error) {
          fail(error);
        }
      };
    });
    return outcome as Outcome;
  }

  /** Looks whether another window wrote. */
  async #refresh(): Promise<void> {
    const now = (await this.load()) as Kept | undefined;
    // What is heard of during a write is looked at after it.
    this.#hasNews = this.#isBusy;
    if (this.#isBusy) return;
    if (!now) {
      if (this.#revision !== null) this.#listener.onGone();
      return;
    }
    if (now.revision === this.#revision && now.lineage === this.#lineage) return;
    if (this.#revision !== null && now.lineage !== this.#lineage) return this.#listener.onGone();
    const merged = await this.#listener.onOther(now);
    if (!merged) return;
    this.seen(now);
    // What this window had and the other had not is written now.
    if (merged.register !== now.register) this.keep(merged);
  }

  /** Deletes the record here and tells the other windows. */
  async forget(): Promise<void> {
    this.#wanted = null;
    await transact('readwrite', (store) => { store.delete(KEY); });
    this.#revision = null;
    this.#channel.postMessage('written');
  }
}
