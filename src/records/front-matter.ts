/** The fields above a text below `content/`, read with their positions: terms, lessons. */
import type { z } from 'zod';
import type { Fault, Position } from './fault.ts';
import type { FileMap } from './files.ts';
import { shapeFaults } from './shape.ts';
import { parseYaml, type Path } from './yaml.ts';

/** One text: its fields, and where they stand. */
export interface Fronted<T> {
  /** Name of its file. */
  id: string;
  file: string;
  fields: T;
  /** Whether prose follows the fields. */
  hasProse: boolean;
  at(path?: Path): Position;
}

const FRONT = /^---\n([\s\S]*?)\n---(?:\n|$)/;

/**
 * All texts of one folder below `content/` by id, and what is wrong with their fields. A text with a fault is absent.
 * @param called what messages call such a record
 */
export function readFronted<S extends z.ZodType>(files: FileMap, folder: string, called: string, schema: S): { texts: Map<string, Fronted<z.output<S>>>; faults: Fault[] } {
  const texts = new Map<string, Fronted<z.output<S>>>();
  const faults: Fault[] = [];
  const begin = `content/${folder}/`;
  for (const [file, source] of Object.entries(files)) {
    const id = file.startsWith(begin) ? /^([^/]+)\.mdx$/.exec(file.slice(begin.length))?.[1] : undefined;
    if (id === undefined) continue;
    const front = FRONT.exec(source);
    const yaml = parseYaml(file, front?.[1] ?? '', source, front ? 4 : 0);
    const parsed = schema.safeParse(yaml.data);
    faults.push(...yaml.faults);
    if (yaml.faults.length > 0) continue;
    if (!parsed.success) faults.push(...shapeFaults(called, schema, parsed.error, yaml).map(({ fault }) => fault));
    else texts.set(id, { id, file, fields: parsed.data, hasProse: source.slice(front?.[0].length ?? 0).trim() !== '', at: yaml.at });
  }
  return { texts, faults };
}
