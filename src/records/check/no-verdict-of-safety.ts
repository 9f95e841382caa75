import { OPAQUE } from '../prose/run.ts';
import { proseOf } from '../prose/read.ts';
import type { Rule } from './rule.ts';

/** What no page may say of a rig: each pattern, and what to say instead. */
const VERDICTS: readonly [RegExp, string][] = [
  [
    /\b(?:is|are|be|was|were|stays?|remains?|looks?)\s+(?:(?:still|quite|very|perfectly|completely|\w+ly)\s+)?safe\b/giu,
    'Say what was tested and what broke; the reader decides.',
  ],
  [
    /(?<!\b(?:not|never|no longer)\s+)\bsafe\s+(?:to|for|enough)\b/giu,
    'Say what was tested and what broke; the reader decides.',
  ],
  [/\bsafely\s+(?:holds?|held|carry|carries|takes?|clip|use)\b/giu, 'Say "breaks above".'],
  [
    new RegExp(
      `\\b(?:holds?|held)\\s+(?:(?:at\\s+least|up\\s+to|about|more\\s+than|around|over)\\s+)?(?:\\d|${OPAQUE})`,
      'giu',
    ),
    'Say "breaks above".',
  ],
];

export const noVerdictOfSafety: Rule = {
  name: 'no-verdict-of-safety',
  description: 'No page calls a rig safe or says that it holds a load: a rig breaks above a force, or below it.',
  check(report, records) {
    for (const { text, at } of proseOf(records).passages) {
      for (const [pattern, advice] of VERDICTS) {
        for (const match of text.matchAll(pattern)) {
          report({
            at: at(match.index),
            subject: 'prose',
            problem: 'is a verdict that no test can give',
            got: match[0].replace(OPAQUE, '...').replace(/\s+/g, ' '),
            advice,
          });
        }
      }
    }
  },
};
