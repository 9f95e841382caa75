/** Keeping the site on the device: asks for the worker, shows what it does, and takes it all away again. The one page on which a worker is ever asked for. */
import { COMPLETE, ownCaches, setCaches, WORKER_FILE } from '../offline/kept-set.ts';
import { channelOf, type CompleteNote, FILL_AGAIN, type FillFault, type Told } from '../offline/told.ts';

const find = <E extends HTMLElement>(what: string): E => document.querySelector(what) as E;
const panel = find('#keep');
const base = panel.dataset['base'] as string;
const root = new URL(base, location.href).href;
const [keepButton, removeButton] = [find<HTMLButtonElement>('[name=keep]'), find<HTMLButtonElement>('[name=remove]')];
const bar = find<HTMLProgressElement>('progress');

/** The content policy lets no plain address start a script; ours is one of the site's own files. */
const policy = (globalThis as { trustedTypes?: { createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): string } } }).trustedTypes?.createPolicy('own-worker', { createScriptURL: (url) => url });

const FAULT_WORDS: Readonly<Record<FillFault, string>> = {
  full: 'The device has no room for it, so nothing new was kept. Delete something on the device, or in this browser, and try again.',
  network: 'A file did not arrive. Nothing is used until all of it is there. Try again where the network is better: what has arrived is not fetched again.',
  changed: 'The site was being renewed just now, so its files did not fit together. Nothing of it is used. Try again in a few minutes.',
  refused: 'The browser refused to keep it. A private window keeps nothing, and a setting may forbid it. Open this page in an ordinary window.',
};

/** Says how things stand; a fault is marked as one. */
function say(words: string, isFault = false): void {
  const says = find('#keep-says');
  says.className = isFault ? 'fault' : '';
  says.textContent = words;
}

/** A day as people say it; where it is none, as it stands. */
function dayWords(day: string): string {
  const date = new Date(`${day}T00:00:00Z`);
  return Number.isNaN(date.getTime()) ? day : date.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' });
}

/** Notes of the sets that are whole on this device. */
async function wholeSets(): Promise<CompleteNote[]> {
  const notes: CompleteNote[] = [];
  for (const cacheName of setCaches(await caches.keys(), base)) {
    const note = await caches.match(root + COMPLETE.slice(1), { cacheName });
    if (note) notes.push(await note.json());
  }
  return notes;
}

/** What stands in the way of keeping anything here; null where nothing does. */
function hindrance(): string | null {
  if (!isSecureContext) return 'This address is not encrypted (http), and browsers keep a site only from an encrypted one (https). Nothing can be kept from here.';
  if (!('serviceWorker' in navigator) || !('caches' in globalThis) || !('BroadcastChannel' in globalThis)) return 'This browser keeps no site. A private window is often the reason: open this page in an ordinary one. Or print the pages that you need.';
  return null;
}

/** Shows how things stand now, and again when a newer copy takes its turn. */
async function show(): Promise<void> {
  const registration = await navigator.serviceWorker.getRegistration(root);
  const [note] = registration ? await wholeSets() : [];
  const isLeft = ownCaches(await caches.keys(), base).length > 0;
  bar.hidden = true;
  keepButton.disabled = false;
  keepButton.textContent = note ? 'Look for a newer copy' : 'Keep this site';
  removeButton.hidden = !note && !registration && !isLeft;
  if (!note) return say(isLeft ? 'Not kept yet. A part of it is here from a try that broke off, and is not used.' : 'Not kept on this device.');
  const kept = `Kept: the copy of ${dayWords(note.evidence.slice(0, 10))}${note.on ? `, fetched on ${dayWords(note.on)}` : ''}. Its pages open without a network.`;
  for (const worker of [registration?.waiting, registration?.active]) if (worker) worker.onstatechange = () => { if (!keepButton.disabled) show(); };
  say(registration?.waiting ? `${kept} A newer copy is here, too. It is used once every page of this site has been closed.` : kept);
}

const hindered = hindrance();
let fault: FillFault | null = null;
/** Called when the worker says that it is done, or why it is not. */
let told: () => void = () => {};
function hear({ data }: MessageEvent<Told>): void {
  if (data.is === 'failed') fault = data.why;
  if (data.is !== 'filling') {
    told();
    return;
  }
  bar.hidden = false;
  bar.max = data.of;
  bar.value = data.done;
}

/** How often the browser is asked whether a worker is there, ms. */
const STEP_MS = 50;
/** A worker that gave up may do so without a word: then its last one is waited for no longer than this, ms. */
const LAST_WORD_MS = 1000;

/** Fetches the set, or looks for a newer one, and waits until that is over. @returns whether there was anything to fetch @throws where the browser refuses a worker */
async function keep(): Promise<boolean> {
  const address = root + WORKER_FILE.slice(1);
  let registration = await navigator.serviceWorker.getRegistration(root);
  const isWhole = registration?.active && (await wholeSets()).length > 0;
  if (registration && isWhole) await registration.update();
  else registration = await navigator.serviceWorker.register((policy?.createScriptURL(address) ?? address) as string, { scope: base, updateViaCache: 'none' });
  const { installing, active } = registration;
  const word = new Promise<void>((done) => { told = done; });
  if (installing) {
    // A worker says that it has its files a moment before the browser says that it is there.
    while (registration.installing || registration.active?.state === 'activating') await new Promise((done) => { setTimeout(done, STEP_MS); });
    if (installing.state === 'redundant' && !fault) await Promise.race([word, new Promise((done) => { setTimeout(done, LAST_WORD_MS); })]);
  } else if (!isWhole && active) {
    // The browser has deleted the copy and kept the worker.
    active.postMessage(FILL_AGAIN);
    await word;
  } else return false;
  return true;
}

keepButton.onclick = async () => {
  fault = null;
  keepButton.disabled = true;
  say('Fetching. Leave this page open.');
  let isNew = true;
  try {
    isNew = await keep();
  } catch (error) {
    // A script that does not arrive is a TypeError; what the browser forbids is not.
    fault ??= error instanceof TypeError ? 'network' : 'refused';
  }
  await show();
  if (fault) say(`${FAULT_WORDS[fault]}${(await wholeSets()).length > 0 ? ' The copy that you have stays in use.' : ''}`, true);
  else if (!isNew) say('This is the newest copy.');
  // Whether the browser agrees is its own affair; the page says what it may do either way.
  else navigator.storage?.persist?.().catch(() => {});
};

removeButton.onclick = async () => {
  const registration = await navigator.serviceWorker.getRegistration(root);
  await registration?.unregister();
  await Promise.all(ownCaches(await caches.keys(), base).map((name) => caches.delete(name)));
  await show();
  say('Removed. What you entered on other pages, such as the register of a rack, is still here.');
  keepButton.focus();
};

/** The build takes copies away: nobody makes one. */
const isOff = panel.dataset['off'] !== undefined;
keepButton.hidden = isOff;
if (hindered) {
  say(hindered, true);
  keepButton.hidden = true;
} else {
  new BroadcastChannel(channelOf(base)).onmessage = hear;
  show().catch(() => {
    say(FAULT_WORDS.refused, true);
    keepButton.hidden = true;
  });
}
