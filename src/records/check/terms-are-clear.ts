import { didYouMean } from '../nearest-name.ts';
import { formsOf, readTerms } from '../terms.ts';
import type { Rule } from './rule.ts';

export const termsAreClear: Rule = {
  name: 'terms-are-clear',
  description: 'Every term has a name and a meaning of one sentence, shares no word with another, and names sources that exist.',
  check(report, { files, sources }) {
    const { terms, faults } = readTerms(files);
    for (const { rule: _rule, ...finding } of faults) report(finding);
    const owners = new Map<string, string>();
    for (const term of terms.values()) {
      if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(term.id))
        report({ at: term.at(), subject: term.id, problem: 'is no name of a term', advice: 'Use a to z, digits and single hyphens in the name of the file.' });
      for (const form of new Set([term.name, ...formsOf(term)])) {
        const other = owners.get(form.toLowerCase());
        if (other !== undefined)
          report({ at: term.at(), subject: term.id, problem: `shares the word "${form}" with ${other}`, advice: 'One word has one meaning: say it in one of them.' });
        owners.set(form.toLowerCase(), term.id);
      }
      for (const [i, id] of term.sources.entries()) {
        if (!sources.has(id))
          report({ at: term.at(['sources', i]), subject: term.id, problem: 'names a source that does not exist', got: id, advice: didYouMean(id, sources.keys(), 'Name a file below data/sources.').trim() });
      }
    }
    for (const [file, source] of Object.entries(files)) {
      if (!/^content\/.*\.mdx$/.test(file)) continue;
      for (const match of source.matchAll(/\]\(\/terms\/#([^)\s]*)/g)) {
        const id = match[1] as string;
        if (!terms.has(id)) {
          const line = source.slice(0, match.index).split('\n').length;
          report({ at: { file, line, col: match.index - source.lastIndexOf('\n', match.index) }, subject: 'link', problem: 'leads to no term', got: id, advice: didYouMean(id, terms.keys(), `Write content/terms/${id || '<id>'}.mdx first.`).trim() });
        }
      }
    }
  },
};
