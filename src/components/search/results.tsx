/** What a search found: each page with its kind, its name, and the line in which the words stand; figures with their numbers. */
import { countWord } from '../../search/count-word.ts';
import type { Found, Outcome } from '../../search/find.ts';
import { piecesOf, sentenceWith, stretchesOf } from '../../search/marked.ts';
import { type Cell, KIND_NAMES, type Kind, type Marked, type Part } from '../../search/pages.ts';

/** What the reader sees of an outcome. */
export interface Shown {
  typed: string;
  outcome: Outcome;
  /** The one kind that is shown, or all. */
  kind: Kind | null;
  /** How many results are shown. */
  most: number;
  /** Folder of the site, with its closing slash. */
  base: string;
  /** Whether figures are still on their way. */
  isWaiting: boolean;
}

/** Pages without one of the words that are shown. */
const SOME = 10;
/** Lines of a figure's record that are shown. */
const CELLS = 3;

/** Address of a search. */
export const searchAddress = (base: string, typed: string, kind: Kind | null): string => `${base}search/?${new URLSearchParams({ q: typed, ...(kind ? { kind } : {}) })}`;

/** What a search came to, in one sentence. */
export function countSentence({ outcome: { found, isPart }, kind }: Pick<Shown, 'outcome' | 'kind'>): string {
  const count = (kind ? found.filter(({ page }) => page.kind === kind) : found).length;
  const number = count > 99 ? 'more than ninety-nine' : countWord(count);
  const words = isPart ? 'some of the words' : 'what you typed';
  return count === 0 ? 'Nothing was found.' : `${number.charAt(0).toUpperCase()}${number.slice(1)} ${count === 1 ? 'place has' : 'places have'} ${words}.`;
}

interface Words { of: string; found: ReadonlySet<string> }

/** Plain words, those that were found set apart. */
function Stretches({ of, found }: Words) {
  return <>{stretchesOf(of, found).map(({ words, isFound }) => (isFound ? <mark>{words}</mark> : words))}</>;
}

/** A text with its figures and names. */
function Text({ of, found, base }: { of: Marked; found: ReadonlySet<string>; base: string }) {
  return (
    <>
      {piecesOf(of).map((piece) => {
        if (piece.kind === 'text') return <Stretches of={piece.words} found={found} />;
        if (piece.kind === 'name') return <cite><Stretches of={piece.words} found={found} /></cite>;
        return <a class="fig" href={`${base}figures/${piece.id.replace('#', '/#')}${piece.id.includes('#') ? '' : '/'}`}><Stretches of={piece.words} found={found} /><Standing of={piece.standing} /></a>;
      })}
    </>
  );
}

/** How we know a number, as beside every number of the site. */
const Standing = ({ of }: { of: string }) => <span class="standing"><span class="hidden">, standing: </span>{of}</span>;

const isCell = (place: Part | Cell): place is Cell => 'value' in place;

/** The number of a record that was found, with what it is of. */
function CellLine({ cell, page, words, base }: { cell: Cell; page: Found['page']; words: ReadonlySet<string>; base: string }) {
  const address = `${base}${page.path.slice(1)}`;
  const said = [cell.at.replaceAll('-', ' ').replace(/hmpe/g, 'HMPE'), cell.where ?? sentenceWith(cell.note ?? '', words)].filter(Boolean).join(': ');
  return (
    <li>
      <a class="fig" href={`${address}${cell.at ? `#${cell.at}` : ''}`}><Stretches of={cell.value} found={words} /><Standing of={cell.standing} /></a>
      {cell.certainty && <>, certainty {cell.certainty}</>}
      {said && <span class="soft" data-working={`${address}#permalink`}>. <Stretches of={said} found={words} /></span>}
    </li>
  );
}

/** One part of a page: its heading, and the sentence in which most of the words stand. */
function PartLine({ part, page, words, base }: { part: Part; page: Found['page']; words: ReadonlySet<string>; base: string }) {
  return (
    <p>
      {part.head && <>{part.at ? <a href={`${base}${page.path.slice(1)}#${part.at}`}>{part.head}</a> : part.head}: </>}
      <Text of={sentenceWith(part.text, words)} found={words} base={base} />
    </p>
  );
}

function Result({ found: { page, places, isInPart, words }, base }: { found: Found; base: string }) {
  const title = <Stretches of={page.title} found={words} />;
  const cells = places.filter(isCell);
  const [part] = places.filter((place): place is Part => !isCell(place));
  const shown = cells.length > 0 ? cells : (page.cells ?? []);
  return (
    <li>
      <p class="wide-words">{KIND_NAMES[page.kind]}</p>
      <h3><a href={`${base}${page.path.slice(1)}`}>{page.kind === 'source' ? <cite>{title}</cite> : title}</a>{page.also && page.kind === 'term' && <span class="soft"> ({page.also.join(', ')})</span>}</h3>
      {page.by && <p class="soft"><cite><Stretches of={page.by} found={words} /></cite></p>}
      {page.says && !isInPart && <p><Text of={sentenceWith(page.says, words)} found={words} base={base} /></p>}
      {part && <PartLine part={part} page={page} words={words} base={base} />}
      {shown.length > 0 && <ul>{shown.slice(0, CELLS).map((cell) => <CellLine cell={cell} page={page} words={words} base={base} />)}</ul>}
      {shown.length > CELLS && <p class="soft">And {shown.length - CELLS > 99 ? 'many' : countWord(shown.length - CELLS)} more {shown.length - CELLS === 1 ? 'number' : 'numbers'} there.</p>}
    </li>
  );
}

/** Ways to look on where nothing has all of the words. */
function Further({ shown: { outcome: { found, missing, near }, base, isWaiting } }: { shown: Shown }) {
  if (found.length > 0 && missing.length === 0) return null;
  return (
    <div class="note">
      {missing.length > 0 && <p>Found nowhere: <span data-input>{missing.join(', ')}</span>.{isWaiting && ' Figures are still on their way.'}</p>}
      {near.length > 0 && <p>Did you mean {near.map((name, i) => <>{i > 0 && (i === near.length - 1 ? ' or ' : ', ')}<a href={searchAddress(base, name, null)}><cite>{name}</cite></a></>)}?</p>}
      <p>No maker's names and no trade names of fibres are used here. A fibre stands under its own name: <a href={`${base}materials/`}>HMPE, nylon, polyester, aramid</a>.</p>
      {found.length > 0 && <p><a href={`${base}a-z/`}>Everything from A to Z</a></p>}
    </div>
  );
}

/** The whole answer. */
export function Results({ shown }: { shown: Shown }) {
  const { typed, outcome, kind, most, base } = shown;
  const kinds = (Object.keys(KIND_NAMES) as Kind[]).filter((one) => [...outcome.found, ...outcome.some].some(({ page }) => page.kind === one));
  const ofKind = (all: readonly Found[]): readonly Found[] => (kind ? all.filter(({ page }) => page.kind === kind) : all);
  const [found, some] = [ofKind(outcome.found), ofKind(outcome.some)];
  return (
    <>
      {outcome.readAs.map(({ typed: word, as }) => <p>Nothing has <q data-input>{word}</q>. Read as <b data-input>{as}</b>.</p>)}
      <Further shown={shown} />
      {kinds.length + (kind ? 1 : 0) > 1 && (
        <nav aria-label="Kinds">
          <ul class="tags kinds">
            {[null, ...kinds].map((one) => <li><a data-kind={one ?? ''} href={searchAddress(base, typed, one)} aria-current={one === kind ? 'true' : undefined}>{one ? KIND_NAMES[one] : 'All'}</a></li>)}
          </ul>
        </nav>
      )}
      <ol class="found">{found.slice(0, most).map((one) => <Result key={one.page.path} found={one} base={base} />)}</ol>
      {some.length > 0 && (
        <>
          <h2>Without one of the words</h2>
          <ol class="found some">{some.slice(0, SOME).map((one) => <Result key={one.page.path} found={one} base={base} />)}</ol>
        </>
      )}
      {found.length > most && <p><button type="button" name="more">Show more</button></p>}
    </>
  );
}
