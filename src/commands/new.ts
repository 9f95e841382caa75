/** `npm run new -- figure <source> <result>` and `npm run new -- source <id>`: write an annotated empty record. */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { draftRecord } from '../records/template.ts';

/** The project's top folder: npm runs its scripts there. */
const root = process.cwd();
const draft = draftRecord(process.argv.slice(2));
if ('problem' in draft) fail(`new: ${draft.problem}. ${draft.advice}`);
else {
  const target = join(root, draft.file);
  if (existsSync(target))
    fail(`${draft.file}: is there already. Choose another name, or edit it; nothing was written.`);
  else {
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, draft.text, { flag: 'wx' });
    console.log(`${draft.file}: written. Fill it, then run npm run check.`);
    const [, collection, source] = draft.file.split('/') as [string, string, string];
    if (collection === 'figures' && !existsSync(join(root, `data/sources/${source}.yaml`)))
      console.log(`There is no source ${source} yet: npm run new -- source ${source}.`);
  }
}

function fail(message: string): void {
  console.error(message);
  process.exitCode = 1;
}
