import type { Rule } from './rule.ts';

const FROM_A_TEXT: readonly string[] = ['read', 'quoted', 'recalled'];
const NO_TEXT: readonly string[] = ['common-practice', 'assumed', 'invented'];

export const standingHasLocator: Rule = {
  name: 'standing-has-locator',
  description:
    'What was read, quoted or recalled says where in its source it stands, or not-recorded; what has no source has no place in one.',
  check(report, { figures }) {
    for (const record of figures.values()) {
      const { standing, locator } = record.data;
      if (FROM_A_TEXT.includes(standing) && locator === undefined && !record.spoilt(['locator'])) {
        report({
          at: record.at(['standing']),
          subject: record.id,
          problem: 'has no locator',
          got: standing,
          advice:
            'Add locator: page, table, clause or post; write not-recorded when you do not have it, never a guess.',
        });
      }
      if (NO_TEXT.includes(standing) && locator !== undefined) {
        report({
          at: record.at(['locator']),
          subject: record.id,
          problem: `the standing ${standing} has no text to point into`,
          got: locator,
          advice: 'Remove the locator, or give the source its own record and folder.',
        });
      }
    }
  },
};
