/** What the page of the verdict is built from: the rules with the places of their figures, and the published breaks of used slings. */
import type { UsedBreak, VerdictSetup } from '../components/retirement/setup.ts';
import { SLING_MATERIALS } from '../retirement/answers.ts';
import { readAll } from '../records/read.ts';
import type { VerdictRule } from '../records/schema.ts';
import { contentHash } from './content-hash.ts';
import { allFigures } from './figures/figures.ts';
import { siteRecords } from './records.ts';
import { verdictRules } from './retirement-rules.ts';
import { href } from './site.ts';
import { figureWords, STANDING_WORDS } from './words.ts';

let known: Record<string, VerdictRule> | undefined;

/** The rules of the project, read once. */
export const siteRules = (): Record<string, VerdictRule> => (known ??= verdictRules(readAll(process.cwd())));

/** Measured breaks of used slings, pulled straight, of which the source says material and age. */
function usedBreaks(): UsedBreak[] {
  return allFigures().flatMap((figure): UsedBreak[] => {
    const { state, material, form, ageYears, method = 'straight' } = figure.rig;
    if (figure.kind !== 'measured' || state !== 'used' || !form || form === 'rope' || ageYears === undefined || method !== 'straight') return [];
    const known = SLING_MATERIALS.find((one) => one === material);
    const years = typeof ageYears === 'number' ? { from: ageYears, to: ageYears } : ageYears;
    return known ? [{ id: figure.id, words: `${figure.what}: ${figureWords(figure)}`, says: STANDING_WORDS[figure.standing].mark, material: known, form, years }] : [];
  });
}

/** All that the script of the page needs. */
export function verdictSetup(): VerdictSetup {
  const { version, slings } = siteRecords();
  const rules = Object.entries(siteRules());
  return {
    base: href('/'),
    evidence: version,
    asOf: version.slice(0, 10),
    rules: Object.fromEntries(rules.map(([id, { figures: _, ...rule }]) => [id, rule])),
    used: usedBreaks(),
    slings: Object.fromEntries([...slings].map(([id, { material, form, widthMm, lengthsCm }]) => [id, { material, form, widthMm, lengthsCm }])),
  };
}

/** Rules with their figures, retirement before inspection, each in its own order; what the table of the page shows. */
export function rulesInOrder(): [string, VerdictRule][] {
  return Object.entries(siteRules()).sort(([, a], [, b]) => (a.verdict === b.verdict ? a.order - b.order : a.verdict === 'retire' ? -1 : 1));
}

/** The rules for pages that read a rack, without their figures, under a name that changes with its content; it stands below `/rack/`. */
export function rulesFile(): { name: string; text: string } {
  const { asOf, rules } = verdictSetup();
  const text = JSON.stringify({ asOf, rules });
  return { name: `rules-${contentHash(text)}.json`, text };
}
