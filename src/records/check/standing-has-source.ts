import { RESERVED_SOURCES, sourceOf } from '../read.ts';
import { didYouMean } from '../nearest-name.ts';
import type { Rule } from './rule.ts';

/** Folders that stand for a standing, and the standing their figures have. */
const FOLDER_STANDING: Record<string, string> = {
  'common-practice': 'common-practice',
  assumed: 'assumed',
  demo: 'invented',
};

export const standingHasSource: Rule = {
  name: 'standing-has-source',
  description:
    'The folder of a figure names its source record; only common practice, assumptions and invented examples have none, and stand in their own folders.',
  check(report, { figures, present }) {
    for (const record of figures.values()) {
      const folder = sourceOf(record.id);
      const { standing } = record.data;
      if (RESERVED_SOURCES.includes(folder)) {
        const due = FOLDER_STANDING[folder] as string;
        if (standing !== due) {
          report({
            at: record.at(['standing']),
            subject: record.id,
            problem: `the folder ${folder} is for the standing ${due} only`,
            got: standing,
            advice: 'Move the figure into the folder of its source, or correct the standing.',
          });
        }
        continue;
      }
      if (!present.sources.has(folder)) {
        report({
          at: record.at(['standing']),
          subject: record.id,
          problem: `there is no source record ${folder}`,
          got: standing,
          advice: didYouMean(
            folder,
            present.sources,
            `Write data/sources/${folder}.yaml: npm run new -- source ${folder}.`,
          ),
        });
      }
      const wanted = Object.keys(FOLDER_STANDING).find(
        (name) => FOLDER_STANDING[name] === standing && name !== 'assumed',
      );
      if (wanted) {
        report({
          at: record.at(['standing']),
          subject: record.id,
          problem: `the standing ${standing} has no source, but the figure stands in a source's folder`,
          got: folder,
          advice: `Move it to data/figures/${wanted}/, or say how it was read.`,
        });
      }
    }
  },
};
