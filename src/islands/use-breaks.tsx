/** What to do with the pulls that were read: a link to the comparison, a link to the planner, three files of a record. */
import { render } from 'preact';
import type { Pull } from '../break-tests/pulls.ts';
import { type ForceUnit, inUnit } from '../break-tests/table-pulls.ts';
import type { AnalysisSetup } from '../components/breaks-analysis/setup.ts';
import { type RecordWords, writeRecord } from '../components/breaks-analysis/write-record.ts';
import { MOST_OWN_PULLS, type OwnTests, serialiseOwnTests } from '../links/own-tests-link.ts';
import { readNumber } from '../links/read-number.ts';
import { INPUT_RANGES } from '../links/rig-keys.ts';
import { save } from './save-file.ts';

/** What was read last; null where nothing was. */
export interface ReadPulls { pulls: readonly Pull[]; notes: readonly string[]; unit: ForceUnit; /** Scatter as a share of the mean, where it is known. */ cv: number | null }

const form = document.querySelector('#use') as HTMLFieldSetElement;
const word = (name: string): string => (form.elements.namedItem(name) as HTMLInputElement).value.trim();
const root = (id: string): Element => document.getElementById(id) as Element;
/** Kinds of eye by what a test bore on. */
const EYE_OF: Readonly<Record<string, OwnTests['eye']>> = { 'bare-wire': 'bare-wire', 'sleeved-wire': 'sleeved-wire', 'plastic-bar': 'wire-under-bar', pin: 'metal-bar' };

/** Address of the comparison with the pulls beside it, or why there is none. */
function compareAddress({ pulls, unit }: ReadPulls, { base, methods }: AnalysisSetup): { address: string } | { why: string } {
  const [method, sling, bearing, on, rating] = ['method', 'sling', 'bearing', 'bearingMm', 'rating'].map(word) as [string, string, string, string, string];
  const eye = EYE_OF[bearing];
  if (!methods.includes(method)) return { why: method === '' ? 'Choose the method above, under “What was pulled”.' : 'The comparison has no row for this: it compares ways to attach a sling.' };
  if (sling === '') return { why: 'Choose the sling above. The comparison knows only slings on its list.' };
  if (!eye) return { why: bearing === '' ? 'Choose what it bore on.' : 'No eye of a device bears like this, so the comparison has no place for it.' };
  if (word('state') !== 'new') return { why: 'The comparison is of new slings. Say above that they were new, if they were.' };
  if (word('pull') !== 'slow') return { why: 'The comparison is of slow pulls. Say above that they were pulled slowly, if they were.' };
  if (word('oneLot') === '' || word('rigs') === '') return { why: 'Say above whether the slings were of one lot, and the rigs new for each pull: both move the answer.' };
  const bearingMm = on === '' ? null : readNumber(on, INPUT_RANGES.bearing);
  if (bearingMm && !bearingMm.ok) return { why: `The diameter is ${bearingMm.why}.` };
  const rated = rating === '' ? null : readNumber(rating, INPUT_RANGES.rating);
  if (rated && !rated.ok) return { why: `The rating is ${rated.why}.` };
  const inKn = inUnit(pulls, unit, 'kN');
  if (inKn.length > MOST_OWN_PULLS) return { why: `At most ${MOST_OWN_PULLS} pulls fit into a link.` };
  if (inKn.every(({ atLeast }) => atLeast)) return { why: 'In no pull did the attachment break.' };
  const of = (atLeast: boolean): number[] => inKn.filter((one) => one.atLeast === atLeast).map(({ force }) => force);
  const tests = serialiseOwnTests({ method, sling, eye, bearingMm: bearingMm?.ok ? bearingMm.value : null, oneLot: word('oneLot') === 'yes', oneRig: word('rigs') === 'one for all pulls', broken: of(false), atLeast: of(true) });
  const keys = [['v', '1'], ['rating', rated?.ok ? String(rated.value) : 'unknown'], ['eye', eye], ['bearing', bearingMm?.ok ? String(bearingMm.value) : 'unmeasured'], ['sling', sling], ['used', 'new'], ['t', tests]];
  return { address: `${base}compare/?${keys.map(([key, value]) => `${key}=${encodeURIComponent(value as string)}`).join('&')}` };
}

/** Where the fields of the record are not said, the sling that was chosen says them. */
function recordWords({ slings }: AnalysisSetup): RecordWords {
  const names = [...form.elements].map((element) => (element as HTMLInputElement).name).filter((name) => name !== '');
  const words = Object.fromEntries(names.map((name) => [name, word(name)])) as unknown as RecordWords;
  const sling = slings[word('sling')];
  if (!sling) return words;
  // A sling on the list stands for a class of widths: what was pulled has its own.
  return { ...words, form: words.form || sling.form, material: words.material || sling.material };
}

const labelOf = (field: string): string => document.querySelector(`label[for="u-${field}"]`)?.textContent ?? field;

/** Draws all three anew. */
export function showUses(read: ReadPulls | null, setup: AnalysisSetup): void {
  const [compare, plan, says, files] = ['compare-says', 'plan-says', 'record-says', 'record-files'].map(root) as [Element, Element, Element, Element];
  if (!read) {
    for (const part of [compare, plan, says]) render(<p>It needs pulls in the box above.</p>, part);
    render(null, files);
    return;
  }
  const made = compareAddress(read, setup);
  render('why' in made ? <p class="fault">{made.why}</p> : <p><a href={made.address}>Put beside published figures</a></p>, compare);
  const address = `${setup.base}breaks/plan/?v=1${read.cv === null ? '' : `&cv=${Number((100 * read.cv).toPrecision(2))}`}`;
  render(<p><a href={address}>Plan the next series</a>{read.cv !== null && <> with the scatter of these: <span data-input>{Number((100 * read.cv).toPrecision(2))} %</span> of the mean</>}.</p>, plan);
  const record = writeRecord(recordWords(setup), read.pulls, read.unit, read.notes, setup.today);
  render(record.missing.length === 0 ? <p>Nothing is missing.</p> : (
    <>
      <p><b>Before the check passes:</b></p>
      <ul>{record.missing.map(({ field, why }) => <li key={field}>{labelOf(field)}: {why}</li>)}</ul>
    </>
  ), says);
  render(
    <>
      {record.files.map(({ path, text }) => (
        <div key={path}>
          <p><code data-id>{path}</code> <button type="button" onClick={() => save(path.slice(path.lastIndexOf('/') + 1), text)}>Save</button></p>
          <textarea class="small" readOnly rows={8} aria-label={path} value={text} />
        </div>
      ))}
    </>,
    files,
  );
}
