import { positionsOf } from '../positions.ts';
import type { Rule } from './rule.ts';

export const publishedIdStays: Rule = {
  name: 'published-id-stays',
  description:
    'An address of a figure that a frozen version has published still leads somewhere: to the figure, or to a record of where it moved or why it was withdrawn.',
  check(report, { files, cells, figures, moved, withdrawn, present }) {
    const versions = Object.keys(files).filter((file) => /^data\/versions\/\d{4}-\d{2}-\d{2}\.\d+\.json$/.test(file));
    const order = (file: string) => file.replace(/\.(\d+)\.json$/, (_, n: string) => `.${n.padStart(6, '0')}`);
    const told = new Set<string>();
    // Newest first: an address is told once, in the version that published it last.
    for (const version of versions.sort((a, b) => (order(a) < order(b) ? 1 : -1))) tell(version, files[version] as string);

    function tell(version: string, text: string): void {
      const place = positionsOf(version, text);
      let frozen: { figures?: object; evidence?: { figures?: object }; gone?: object };
      try {
        frozen = JSON.parse(text);
      } catch {
        report({
          at: place(0),
          subject: 'version',
          problem: 'is not JSON',
          advice: 'Cut the version again; a frozen file is never edited.',
        });
        return;
      }
      const published = frozen.figures ?? frozen.evidence?.figures ?? {};
      for (const id of Object.keys({ ...published, ...frozen.gone })) {
        if (told.has(id)) continue;
        told.add(id);
        const record = id.split('#')[0] as string;
        if (cells.has(id) || moved.has(record) || withdrawn.has(record)) continue;
        if (!(id in published) && figures.has(id)) continue; // a whole table that has come back
        if (present.figures.has(record) && ![...cells.keys()].some((cell) => cell.split('#')[0] === record)) continue; // unreadable: told elsewhere
        report({
          at: place(Math.max(0, text.indexOf(JSON.stringify(id)))),
          subject: id,
          problem: 'was published in this version and is gone',
          advice: `Put it back, or write data/figures/${record}.yaml with kind: moved, to, on and why, or kind: withdrawn, on, why and was.`,
        });
      }
    }
  },
};
