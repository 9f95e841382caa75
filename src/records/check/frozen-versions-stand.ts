import { createHash } from 'node:crypto';
import { positionsOf } from '../positions.ts';
import type { Rule } from './rule.ts';

const INDEX = 'data/versions/index.json';
const FROZEN = /^data\/versions\/(\d{4}-\d{2}-\d{2}\.\d+)\.json$/;

export const frozenVersionsStand: Rule = {
  name: 'frozen-versions-stand',
  description: 'Every frozen version is the file whose hash the index keeps, byte for byte, and no file stands beside the index.',
  check(report, { files }) {
    const text = files[INDEX];
    const frozen = Object.keys(files).filter((file) => FROZEN.test(file));
    if (text === undefined) {
      for (const file of frozen) report({ at: positionsOf(file, files[file] as string)(0), subject: 'version', problem: 'is frozen and there is no index', advice: `Put ${INDEX} back from the repository's history.` });
      return;
    }
    const at = positionsOf(INDEX, text);
    let index: { version: string; sha256: string }[];
    try {
      index = JSON.parse(text);
      if (!Array.isArray(index)) throw new SyntaxError('no list');
    } catch {
      report({ at: at(0), subject: 'index', problem: 'is no list in JSON', advice: 'Put it back from the repository\'s history; only the release command writes it.' });
      return;
    }
    const place = (version: string) => at(Math.max(0, text.indexOf(JSON.stringify(version))));
    for (const { version, sha256 } of index) {
      const file = `data/versions/${version}.json`;
      const own = files[file];
      if (own === undefined) {
        report({ at: place(version), subject: version, problem: 'stands in the index and its file is gone', advice: `Put ${file} back from the repository's history: links name it.` });
      } else if (createHash('sha256').update(own).digest('hex') !== sha256) {
        report({ at: positionsOf(file, own)(0), subject: version, problem: 'is not the file that was frozen: its hash is another than the index says', advice: 'Put it back from the repository\'s history. What has changed since goes into a new version: npm run release -- <date>.' });
      }
    }
    for (const file of frozen) {
      const version = (FROZEN.exec(file) as RegExpExecArray)[1] as string;
      if (!index.some((entry) => entry.version === version)) {
        report({ at: positionsOf(file, files[file] as string)(0), subject: version, problem: 'stands in no index', advice: 'Remove it; versions are made by the release command alone.' });
      }
    }
  },
};
