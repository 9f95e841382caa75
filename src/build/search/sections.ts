/** The prose of a page cut at its headings, for search: what stands in the file, with figures and names of sources kept apart. */
import { proseOfComponent } from '../../records/prose/component.ts';
import { proseOfMdx } from '../../records/prose/mdx.ts';
import { OPAQUE, type Run } from '../../records/prose/run.ts';
import { figureMark, nameMark, sentencesOf } from '../../search/marked.ts';
import type { Part } from '../../search/pages.ts';
import { figure } from '../figures/figures.ts';
import { figureWords, STANDING_WORDS } from '../words.ts';

/** A figure of prose as it is printed there. */
function markOf(source: string): string | null {
  const fig = /^<Fig\s+id=(?:"|\{"|\{`|\{')([a-z0-9-]+\/[^"'`${}\s]+)["'`]/.exec(source);
  if (fig?.[1]) {
    const shown = figure(fig[1]);
    return figureMark(shown.id, figureWords(shown), STANDING_WORDS[shown.standing].mark);
  }
  const name = /^<(cite|time)\b[^>]*>([^<{]+)<\/\1>/.exec(source);
  return name?.[2] ? nameMark(name[2]) : null;
}

/** A run as it is shown. What is computed has no words here: its sentences are left out. */
function textOfRun({ text, offsets }: Run, source: string): string {
  let marked = '';
  for (let i = 0; i < text.length; i++) {
    const sign = text[i] as string;
    // Braces are the sign of a mark.
    marked += sign === OPAQUE ? (markOf(source.slice(offsets[i])) ?? OPAQUE) : /[{}]/.test(sign) ? ' ' : sign;
  }
  const shown = marked.replace(/\u200b/g, '').replace(/[ \t\r\n]+/g, ' ').trim();
  return sentencesOf(shown).filter((sentence) => !sentence.includes(OPAQUE)).join(' ');
}

/** The anchor that a heading gets from its words, as the builder of the pages makes it. */
export const anchorOf = (heading: string): string => heading.toLowerCase().replace(/[^\p{L}\p{N}\s_-]/gu, '').replace(/\s/g, '-');

/** What stands before a run in the file, where the run is a heading: its level and, in a component, its attributes. */
function headingBefore(source: string, offset: number, isMdx: boolean): { level: number; id: string | null } | null {
  const before = source.slice(0, offset);
  const found = isMdx ? /(?:^|\n)(#{1,4}) +$/.exec(before) : /<h([1-4])((?:\s[^<>]*)?)>\s*$/.exec(before);
  if (!found?.[1]) return null;
  return { level: isMdx ? found[1].length : Number(found[1]), id: /\bid="([^"]*)"/.exec(found[2] ?? '')?.[1] ?? null };
}

/** Attributes that hold sentences for readers, such as those of a warning. */
const isSentence = ({ kind, text }: Run): boolean => kind === 'attribute' && /^\p{Lu}.*\s.*[.!?]$/su.test(text.trim());

/**
 * Parts of a file of prose. What stands before the first heading has neither anchor nor heading.
 * @param file its path: `.mdx`, whose headings have anchors of their own, or a component, where only those with an id have
 */
export function sectionsOf(file: string, source: string): Part[] {
  const isMdx = file.endsWith('.mdx');
  const { runs } = isMdx ? proseOfMdx(source) : proseOfComponent(file, source);
  const parts: Part[] = [{ at: '', head: '', text: '' }];
  for (const run of runs) {
    if (run.kind !== 'text' && !isSentence(run)) continue;
    const heading = run.kind === 'text' ? headingBefore(source, run.offsets[0] as number, isMdx) : null;
    const text = textOfRun(run, source);
    const last = parts.at(-1) as Part;
    if (heading) {
      if (heading.level > 1 && text !== '') parts.push({ at: isMdx ? anchorOf(text) : (heading.id ?? ''), head: text, text: '' });
    } else if (/\p{L}/u.test(text)) last.text += `${last.text === '' ? '' : '\n'}${text}`;
  }
  return parts.filter(({ text }) => text !== '');
}
