/** A verdict as plain text, to send to somebody. */
import type { Verdict } from '../../retirement/verdict.ts';
import type { VerdictSetup } from './setup.ts';
import { headlineText } from './words.ts';

/** The verdict, its reasons, what it leaves open, and where it stands. */
export function verdictText({ strictest, reasons }: Verdict, rules: VerdictSetup['rules'], on: string, address: string): string {
  const line = (rule: string, asks: string): string => `- ${asks}. ${rules[rule]?.what ?? 'The limit that the maker prints'}`;
  const met = reasons.filter(({ why }) => why === 'met');
  const open = reasons.length - met.length;
  return [
    `${headlineText(strictest, on)} (judged on ${on}).`,
    ...met.map(({ rule, asks }) => line(rule, headlineText(asks, on))),
    ...(open > 0 ? [`${open} more ${open === 1 ? 'reason rests' : 'reasons rest'} on what is not known, which counts against the sling.`] : []),
    'The maker\'s instruction comes first. No verdict sees what an inspection misses.',
    address,
  ].join('\n');
}
