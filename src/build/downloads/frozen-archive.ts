/**
 * An archive for each frozen version of the evidence: the frozen file byte for byte, its schema, its hash, what changed in
 * it, how to cite it. It has what was frozen and no more: the tables of `/data/` are not kept by version.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { bibtex } from '../../citing/bibtex.ts';
import { siteVersions } from '../versions/changes-page.ts';
import { ROOT } from '../evidence.ts';
import { address } from '../site.ts';
import { dayOf, listText, type ListedVersion, readVersion, versionText } from '../versions/versions.ts';
import { archive } from './archive.ts';
import { citationFile, citationText, licenceOf, readCitation, type Release, siteWork } from './citation.ts';
import { sha256, textFile } from './file.ts';
import { frozenSchema } from './frozen-schema.ts';
import { MAKER_FIRST } from './readme.ts';

/** An archive as pages list it. */
export interface FrozenArchive {
  version: string;
  /** Path on the site. */
  path: string;
  bytes: Uint8Array<ArrayBuffer>;
  /** Of the archive itself. */
  sha256: string;
}

/** Name of the archive of a version. */
export const frozenName = (version: string): string => `second-sling-evidence-${version}.zip`;

/** What a frozen file lacks that later ones have, a sentence each. */
function lacks(version: string): string[] {
  const { evidence, gone } = readVersion(version, ROOT);
  return [
    ...(evidence.rules === undefined ? ['This version has no rules of retirement: the comparison did not read any yet.'] : []),
    ...(gone === undefined ? ['This version has no list of figures that moved or were withdrawn.'] : []),
  ];
}

/** Markdown. */
function frozenReadme({ version, model, sha256: hash, words, changes }: ListedVersion, cite: string, licence: { name: string; title: string; path: string }): string {
  return [
    `# Second Sling: evidence ${version}`,
    `Frozen on ${dayOf(version)}, model ${model}. ${address(`/changes/${version}/`)}`,
    `${MAKER_FIRST} No number here tells you that a sling of yours will bear a load.`,
    '## What is in it',
    [
      `- \`${version}.json\`: what the engine read, and the answers of the prebuilt comparisons as they were shown. Its SHA-256 is ${hash}.`,
      '- `schema.json`: JSON Schema of that file.',
      `- \`changes.json\`: what changed ${changes.since ? `since ${changes.since.version}` : 'against nothing, since there is no version before it'}.`,
      '- `SHA256SUMS`: the hash of each file, for `sha256sum -c SHA256SUMS`.',
      '- `CITATION.cff`, `citation.bib`, `LICENSE`.',
    ].join('\n'),
    '## What is not in it',
    ['Only what the engine reads was frozen: figures that no factor, method, gap or rule named are absent, and so are sources, series of breaks, texts and drawings. The tables of the folder `/data/` are of the newest records alone.', ...lacks(version)].join(' '),
    '## Why it changed',
    [...(words?.model ? [`The model: ${words.model}`] : []), ...(words?.says ?? [])].join('\n\n') || 'Nobody said why; `changes.json` says what.',
    '## How to cite', `> ${cite}`, 'Cite the source of a number first.',
    '## Licence', `${licence.title} (${licence.name}), ${licence.path} Name Second Sling, link the page, and say what you changed. \`LICENSE\` has the words in full.`,
  ].join('\n\n').concat('\n');
}

/** The archive of one version. The same frozen file gives the same bytes. */
function frozenArchive(listed: ListedVersion, cff: string, licence: string): FrozenArchive {
  const { version, changes } = listed;
  const citation = readCitation(cff);
  const day = dayOf(version);
  const release: Release = { version, day, site: address('/') };
  const work = { ...siteWork(citation, release), key: `second-sling-${version.replace('.', '-')}`, url: address(`/changes/${version}/`) };
  const files = [
    textFile(`${version}.json`, 'application/json', '', versionText(version, ROOT)),
    textFile('schema.json', 'application/schema+json', '', `${JSON.stringify(frozenSchema(), null, 2)}\n`),
    textFile('changes.json', 'application/json', '', listText(changes)),
    textFile('CITATION.cff', 'text/yaml', '', citationFile(cff, release)),
    textFile('citation.bib', 'application/x-bibtex', '', bibtex([work])),
    textFile('LICENSE', 'text/plain', '', licence),
    textFile('README.md', 'text/markdown', '', frozenReadme(listed, citationText(citation, release), licenceOf(citation))),
  ];
  const sums = textFile('SHA256SUMS', 'text/plain', '', files.map((file) => `${sha256(file.bytes)}  ${file.path}\n`).join(''));
  const folder = frozenName(version).replace(/\.zip$/, '');
  const bytes = archive([...files, sums].map((file) => ({ path: `${folder}/${file.path}`, bytes: file.bytes })), day);
  return { version, path: `/data/versions/${frozenName(version)}`, bytes, sha256: sha256(bytes) };
}

let made: FrozenArchive[] | undefined;

/** The archives of all versions, newest first, made once for a build. */
export function frozenArchives(): readonly FrozenArchive[] {
  if (made) return made;
  const [cff, licence] = ['CITATION.cff', 'LICENSE'].map((name) => readFileSync(join(ROOT, name), 'utf8')) as [string, string];
  made = siteVersions().map((listed) => frozenArchive(listed, cff, licence));
  return made;
}
