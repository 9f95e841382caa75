/** Hands a page on: its link, a code to scan that is drawn here, and a sheet to print. */
import { encode } from 'uqr';
import { codePath } from '../charts/code-path.ts';
import { rigLine } from '../components/comparator/words.ts';
import type { SlingNames } from '../components/comparator/setup.ts';
import { comparisonToSend, ownAddress, parseSendLink } from '../links/send-link.ts';
import { save } from './save-file.ts';
import { copy, say } from './take-away.ts';

/** What the page knows: the folder of the site, its slings, and what answers are made with today. */
interface Setup { base: string; slings: SlingNames; evidence: string; model: number }

/** Most bytes that the largest code carries with the middle amount of repair, ISO/IEC 18004, version 40, level M. */
const MOST_BYTES = 2331;
/** Modules a side beyond which a phone has to come close; our own choice. */
const DENSE = 93;
/** Side of the picture that is saved, pixels a module. */
const PIXELS = 12;

const setup = JSON.parse(document.getElementById('send-setup')?.textContent ?? '') as Setup;
const site = { origin: location.origin, base: setup.base };
const find = <Found extends Element = HTMLElement>(what: string): Found => document.querySelector(what) as Found;
const form = find<HTMLFormElement>('#send');
const field = form.elements.namedItem('to') as HTMLInputElement;
const fault = find('#says-to');
const outcome = find('#outcome');
const code = find<SVGSVGElement>('#code');
const tools = find('.tools');

/** What stands on the page now. */
let shown: { address: string; path: string; side: number } | null = null;

/** Draws what the words name; what is wrong stands at the field. Nothing typed is touched. */
function show(words: string): void {
  const sent = ownAddress(words, site);
  const isFault = 'why' in sent && sent.why !== 'empty';
  fault.textContent = isFault ? `${words.trim()}: ${sent.why}. Paste an address that begins with ${site.origin}${site.base}.` : '';
  field.ariaInvalid = isFault ? 'true' : null;
  shown = null;
  say(tools, '');
  outcome.hidden = 'why' in sent;
  if ('why' in sent) return;
  const comparison = comparisonToSend(sent.address, site, { slings: Object.keys(setup.slings) }, setup);
  const address = comparison?.address ?? sent.address;
  find('#leads').textContent = comparison ? rigLine(comparison.rig, setup.slings) : new URL(address).pathname;
  const link = find<HTMLAnchorElement>('#link');
  link.textContent = link.href = address;
  const size = new TextEncoder().encode(address).length;
  const fits = size <= MOST_BYTES;
  const drawn = fits ? codePath(encode(address, { ecc: 'M', border: 0 }).data) : { path: '', side: 1 };
  code.setAttribute('viewBox', `0 0 ${drawn.side} ${drawn.side}`);
  code.lastElementChild?.setAttribute('d', drawn.path);
  code.toggleAttribute('hidden', !fits);
  for (const button of tools.querySelectorAll<HTMLButtonElement>('[name=svg], [name=png]')) button.disabled = !fits;
  find('#of-code').textContent = !fits
    ? `The address has ${size} letters, and a code takes ${MOST_BYTES} at most. Send the link.`
    : drawn.side > DENSE ? 'A long address makes a fine pattern: print it large, or send the link.' : '';
  shown = { address, ...drawn };
}

/** The code as a picture, dark on light whatever the page's colours are. */
function svgText({ path, side }: { path: string; side: number }): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${side * 4}" height="${side * 4}" viewBox="0 0 ${side} ${side}" shape-rendering="crispEdges"><rect width="${side}" height="${side}" fill="#fff"/><path d="${path}"/></svg>\n`;
}

function savePng({ path, side }: { path: string; side: number }): Promise<void> {
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = side * PIXELS;
  const pen = canvas.getContext('2d') as CanvasRenderingContext2D;
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.scale(PIXELS, PIXELS);
  pen.fillStyle = '#000';
  pen.fill(new Path2D(path));
  return new Promise((done, fail) => canvas.toBlob((blob) => {
    if (!blob) return fail(new Error('no picture'));
    const anchor = document.createElement('a');
    anchor.href = URL.createObjectURL(blob);
    anchor.download = 'code.png';
    anchor.click();
    URL.revokeObjectURL(anchor.href);
    done();
  }, 'image/png'));
}

async function take(how: string): Promise<void> {
  if (!shown) return;
  if (how === 'print') return print();
  if (how === 'link') return copy(tools, shown.address, 'Link copied.');
  if (how === 'hand') {
    // Whoever closes the list of the device without a choice has done nothing wrong.
    return navigator.share({ title: find('#leads').textContent ?? '', url: shown.address }).catch((refused: Error) => { if (refused.name !== 'AbortError') throw refused; });
  }
  if (how === 'svg') save('code.svg', svgText(shown), 'image/svg+xml');
  else await savePng(shown);
  say(tools, `Saved code.${how}.`);
}

/** Takes the page from the address, or else from where the reader came from; from then on it stands in the address. */
function readAddress(): void {
  const { to, notUnderstood } = parseSendLink(location.search);
  const list = find('#not-used');
  list.hidden = notUnderstood.length === 0;
  find('#not-used ul').replaceChildren(...notUnderstood.map(({ piece, why }) => Object.assign(document.createElement('li'), { textContent: `${piece}: ${why}` })));
  field.value = to ?? field.value;
  show(field.value);
}

form.onsubmit = (event) => {
  event.preventDefault();
  const query = `?to=${encodeURIComponent(field.value.trim())}`;
  if (query !== location.search) history.pushState(null, '', query);
  readAddress();
  (outcome.hidden ? field : outcome).focus();
};
tools.onclick = ({ target }) => {
  if (target instanceof HTMLButtonElement) take(target.name).catch(() => say(tools, 'That failed. Try again.'));
};
addEventListener('popstate', readAddress);
find('[name=hand]').hidden = !('share' in navigator);
if (document.referrer && !location.search) {
  const from = ownAddress(document.referrer, site);
  if ('address' in from && new URL(from.address).pathname !== location.pathname) history.replaceState(null, '', `?to=${encodeURIComponent(from.address)}`);
}
readAddress();
