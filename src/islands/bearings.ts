/**
 * Knots and bearings: leaves out what the reader did not choose, and says of each panel where the reader's bearing
 * lies. The page is built with every point; nothing is computed here but a place.
 */
import { alongPercent } from '../charts/bearing-chart.ts';
import { bearingPlace, SAME_BEARING_MM } from '../evidence/bearing-place.ts';
import { readNumber } from '../links/read-number.ts';

const form = document.getElementById('choose') as HTMLFormElement;
const field = (name: string) => form.elements.namedItem(name) as HTMLSelectElement | HTMLInputElement;
const all = <E extends Element = HTMLElement>(what: string, inside: ParentNode = document): E[] => [...inside.querySelectorAll<E>(what)];
const text = (id: string, words: string): void => { (document.getElementById(id) as HTMLElement).textContent = words; };

/** Diameters that a reader may give, mm. */
const RANGE = { low: 0.5, high: 100, unit: 'mm' } as const;

/** A diameter as typed; null where nothing stands there or it cannot be read. What is wrong is said at the field. */
function diameter(name: 'bearing' | 'rope'): { value: number | null; why: string } {
  const input = field(name) as HTMLInputElement;
  const typed = input.value.trim();
  const read = typed === '' || input.closest('[hidden]') ? null : readNumber(typed, RANGE as never);
  input.ariaInvalid = read && !read.ok ? 'true' : 'false';
  return read?.ok ? { value: read.value, why: '' } : { value: null, why: read ? `${typed}: ${read.why}` : '' };
}

/** Where a bearing lies, as a sentence. */
function placeWords(bearing: number, tested: readonly number[]): string {
  if (tested.length === 0) return 'We found no test of this on any bearing.';
  const place = bearingPlace(bearing, tested);
  if ('at' in place) return 'Tested at this bearing, within half a millimetre. The points are marked in the table.';
  if ('between' in place) return 'We found no test here. It lies between two tested bearings.';
  return place.miss === 'thinner' ? 'Thinner than any that was tested. We found no test: expect less than at the thinnest.' : 'Thicker than any that was tested. We found no test.';
}

/** Draws the reader's bearing into a panel, or takes it out. */
function ask(panel: HTMLElement, bearing: number | null): void {
  const tested = (panel.dataset['tested'] ?? '').split(' ').filter(Boolean).map(Number);
  const asked = panel.querySelector('.asked') as SVGElement;
  const at = bearing === null ? null : alongPercent(bearing, Number(panel.dataset['end']));
  asked.setAttribute('visibility', at === null ? 'hidden' : 'visible');
  for (const end of ['x1', 'x2']) asked.querySelector('line')?.setAttribute(end, `${at ?? 0}%`);
  (panel.querySelector('.at') as HTMLElement).textContent = bearing === null ? '' : panel.dataset['what'] === 'bent' ? ratioWords(bearing, tested) : placeWords(bearing, tested);
}

/** The same for a ratio of pin over rope: the table of the trade has steps, and is no test. */
function ratioWords(ratio: number, listed: readonly number[]): string {
  if (ratio < Math.min(...listed)) return 'The pin is thinner than the wire. The table says nothing of it.';
  return ratio > Math.max(...listed) ? 'Beyond the end of the table.' : 'Between its steps the table says nothing. The step below is the weaker.';
}

function update(): void {
  const material = field('material').value;
  const what = field('what').value;
  const isWire = material === 'wire' || what === 'bent';
  (document.getElementById('rope') as HTMLElement).hidden = !isWire;
  const bearing = diameter('bearing');
  const rope = diameter('rope');
  text('fault', [bearing.why, rope.why].filter(Boolean).join('; '));
  const isChosen = ({ dataset }: HTMLElement, holder?: HTMLElement): boolean =>
    (material === '' || dataset['material'] === material) && (what === '' || (holder ?? { dataset }).dataset['what'] === what);
  for (const panel of all('.bearing')) {
    panel.hidden = !isChosen(panel);
    const isRatio = panel.dataset['what'] === 'bent';
    ask(panel, isRatio ? (bearing.value !== null && rope.value !== null ? bearing.value / rope.value : null) : bearing.value);
  }
  for (const row of all('#points tbody tr')) {
    row.hidden = !isChosen(row);
    const own = row.dataset['bearing'];
    const isHere = own !== undefined && row.dataset['what'] !== 'bent' && bearing.value !== null && Math.abs(Number(own) - bearing.value) <= SAME_BEARING_MM;
    row.classList.toggle('here', isHere);
  }
  for (const group of all('.lanes tbody')) {
    const rows = all('tr[data-material]', group);
    for (const row of rows) row.hidden = !isChosen(row, group);
    group.hidden = rows.every(({ hidden }) => hidden);
  }
  for (const holder of [...all('.lanes'), ...all('[data-part]')]) holder.hidden = all('tr[data-material], .bearing', holder).every(({ hidden }) => hidden);
  const panels = all('.bearing').filter(({ hidden }) => !hidden);
  const [only] = panels.length === 1 ? panels : [];
  const points = all('#points tbody tr').filter(({ hidden }) => !hidden).length;
  const place = only?.querySelector('.at')?.textContent;
  if (place) text('chosen', `${only?.querySelector('h4')?.textContent}: ${place}`);
  else if (material === '' && what === '') text('chosen', 'All published points are shown.');
  else text('chosen', points > 0 ? 'Only the published points of your choice are shown.' : 'We found no published point of this. The space stays empty.');
}

form.oninput = update;
form.onsubmit = (event) => {
  event.preventDefault();
  const found = document.getElementById('chosen') as HTMLElement;
  found.focus();
  found.scrollIntoView({ block: 'start' });
};
update();
