/** The few names of a service worker's world that are used here: the project's types are those of a page. */

export interface LastingEvent extends Event {
  /** Keeps the worker alive until the work is done; a rejected one makes an install fail. */
  waitUntil(work: Promise<unknown>): void;
}

export interface AskedEvent extends LastingEvent {
  readonly request: Request;
  /** Page that asks; empty for a page that is only being opened. */
  readonly clientId: string;
  /** Page that is being opened. */
  readonly resultingClientId: string;
  respondWith(answer: Promise<Response>): void;
}

export interface WorkerScope {
  readonly registration: ServiceWorkerRegistration;
  readonly location: Location;
  addEventListener(type: 'install' | 'activate', listener: (event: LastingEvent) => void): void;
  addEventListener(type: 'message', listener: (event: LastingEvent & { readonly data: unknown }) => void): void;
  addEventListener(type: 'fetch', listener: (event: AskedEvent) => void): void;
}
