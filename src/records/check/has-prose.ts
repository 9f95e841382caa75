import type { RecordFile, Records } from '../read.ts';
import type { Rule } from './rule.ts';

/** The rule that every record of one kind has its page in words, `content/<folder>/<id>.mdx`. */
export function hasProse(name: string, description: string, folder: string, of: (records: Records) => Map<string, RecordFile<unknown>>): Rule {
  return {
    name,
    description,
    check(report, records) {
      for (const record of of(records).values()) {
        const file = `content/${folder}/${record.id}.mdx`;
        if (!(file in records.files))
          report({
            warning: true,
            at: record.at(),
            subject: record.id,
            problem: `there is no ${file}`,
            advice: 'Write it; numbers only through <Fig id>.',
          });
      }
    },
  };
}
