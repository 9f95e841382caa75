/** Reads all prose of a project once: pages, components and the texts of records that reach a page. */
import type { Position } from '../fault.ts';
import { type FileMap, reachesPage } from '../files.ts';
import { positionsOf } from '../positions.ts';
import type { RecordFile, Records } from '../read.ts';
import { parseYaml } from '../yaml.ts';
import { proseOfComponent } from './component.ts';
import { proseOfMdx } from './mdx.ts';

export interface Passage {
  file: string;
  text: string;
  kind: 'text' | 'attribute' | 'code' | 'front matter' | 'record';
  /** Position of the letter at an index of `text`. */
  at(index: number): Position;
}

export interface ProseOfProject {
  passages: Passage[];
  /** Figures that prose names. */
  mentions: { id: string; at: Position }[];
  failures: { message: string; at: Position }[];
}

const read = new WeakMap<FileMap, ProseOfProject>();

/** The prose of a project; read once for all rules. */
export function proseOf(records: Records): ProseOfProject {
  const known = read.get(records.files);
  if (known) return known;
  const all: ProseOfProject = { passages: [], mentions: [], failures: [] };
  for (const [file, source] of Object.entries(records.files)) {
    const isMdx = /^content\/.*\.mdx$/.test(file);
    if (!isMdx && !reachesPage(file)) continue;
    const prose = isMdx ? proseOfMdx(source) : proseOfComponent(file, source);
    const place = positionsOf(file, source);
    for (const { text, offsets, kind } of prose.runs)
      all.passages.push({ file, text, kind, at: (index) => place(offsets[index] ?? 0) });
    for (const { id, offset } of prose.mentions) all.mentions.push({ id, at: place(offset) });
    for (const { offset, message } of prose.failures) all.failures.push({ message, at: place(offset) });
  }
  // Words about a version, which the list of changes shows.
  for (const [file, source] of Object.entries(records.files)) {
    if (!/^data\/changes\/[^/]+\.yaml$/.test(file)) continue;
    const { data, at } = parseYaml(file, source);
    walk({ file, at }, data, []);
  }
  const texts = (collection: Map<string, RecordFile<unknown>>) => {
    for (const record of collection.values()) walk(record, record.data, []);
  };
  texts(records.methods);
  texts(records.replacements);
  texts(records.law);
  texts(records.rules);
  texts(records.materials);
  texts(records.withdrawn);
  texts(records.series);
  // What a correction quotes is a number of its figure's; the rest is words.
  for (const record of records.corrections.values())
    for (const field of ['reason', 'reported'] as const) walk(record, record.data[field], [field]);
  read.set(records.files, all);
  return all;

  function walk(record: Pick<RecordFile<unknown>, 'file' | 'at'>, value: unknown, path: (string | number)[]): void {
    // Ids and addresses are names, not words.
    if (typeof value === 'string') {
      if (/\s/.test(value))
        all.passages.push({ file: record.file, text: value, kind: 'record', at: () => record.at(path) });
    } else if (value && typeof value === 'object')
      for (const [key, part] of Object.entries(value))
        walk(record, part, [...path, Array.isArray(value) ? Number(key) : key]);
  }
}
