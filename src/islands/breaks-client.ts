/** The page's hand on the worker: the newest question counts, and what is cancelled stops at once. */
import workerAddress from './breaks-worker.ts?worker&url';
import type { AskAnalysis, Asked, AskTraces, Told } from './breaks-asked.ts';

/** The content policy lets no plain address start a script; ours is one of the site's own files. */
const policy = (globalThis as { trustedTypes?: { createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): string } } }).trustedTypes?.createPolicy('own-worker', { createScriptURL: (url) => url });

export class BreaksClient {
  #worker: Worker | null = null;
  #id = 0;
  readonly #onTold: (told: Told) => void;
  readonly #onLost: () => void;

  /** @param onLost the worker did not arrive, or broke down */
  constructor(onTold: (told: Told) => void, onLost: () => void) {
    this.#onTold = onTold;
    this.#onLost = onLost;
  }

  /** Asks; answers to earlier questions are no longer told. */
  ask(question: AskAnalysis | AskTraces): void {
    if (!this.#worker) {
      const address = new URL(workerAddress, location.href).href;
      this.#worker = new Worker(policy?.createScriptURL(address) ?? address, { type: 'module' });
      this.#worker.onmessage = ({ data }: MessageEvent<Told>) => {
        if (data.id === this.#id) this.#onTold(data);
      };
      this.#worker.onerror = () => {
        this.cancel();
        this.#onLost();
      };
    }
    this.#id += 1;
    this.#worker.postMessage({ ...question, id: this.#id } satisfies Asked);
  }

  /** Stops whatever is under way. */
  cancel(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#id += 1;
  }
}
