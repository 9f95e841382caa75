/** Every page is valid HTML by html-validate's recommended rules. */
import { HtmlValidate, StaticConfigLoader } from 'html-validate';
import type { Fault, Gate } from './site.ts';

const validator = new HtmlValidate(
  new StaticConfigLoader({
    root: true,
    extends: ['html-validate:recommended'],
    rules: {
      // The build writes `<!DOCTYPE html>` and `<br/>` its own way; both are valid.
      'doctype-style': 'off',
      'void-style': 'off',
      // The build joins lines and may leave a space at an end; no reader sees it.
      'no-trailing-whitespace': 'off',
      // The id of a cell is its name in the record, a contract of ours: HTML takes anything without a space.
      'valid-id': ['error', { relaxed: true }],
      // Two landmarks or long titles are judged by the accessibility tests and by people.
      'long-title': 'off',
    },
  }),
);

export const markup: Gate = {
  name: 'markup',
  holds: 'valid HTML',
  async check(site) {
    const faults: Fault[] = [];
    for (const page of site.pages) {
      const report = await validator.validateString(page.html, page.path);
      for (const result of report.results) {
        for (const message of result.messages) {
          faults.push({ page: page.path, message: `${message.message} (${message.ruleId}, ${message.selector ?? `line ${message.line}`})` });
        }
      }
    }
    return faults;
  },
};
