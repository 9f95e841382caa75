/**
 * What the script of a comparison fetches: the evidence, and what older links are told. Each name changes with the file's content and
 * with all that it leads to. So no page is ever answered from the data of another build, whatever cache stands between.
 */
import { pageEvidence } from './page.ts';
import { contentHash } from '../content-hash.ts';
import { siteThen, thenFile, thenIndex } from '../versions/then.ts';

/** A file as it is sent; its name stands below `/compare/`. */
export interface ComparatorFile { name: string; text: string }

let known: { evidence: ComparatorFile; older: ComparatorFile[] } | null = null;

/** The evidence, and what older links are told: the index, then each version. The index is named like the evidence, but for the first word. */
export function comparatorFiles(): { evidence: ComparatorFile; older: ComparatorFile[] } {
  if (known) return known;
  const evidence = pageEvidence();
  const [text, index] = [JSON.stringify(evidence), JSON.stringify(thenIndex())];
  const stamp = `${evidence.version}.${contentHash(text + index)}`;
  known = { evidence: { name: `evidence-${stamp}.json`, text }, older: [{ name: `then-${stamp}.json`, text: index }, ...[...siteThen().values()].map(thenFile)] };
  return known;
}
