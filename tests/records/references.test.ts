/** Every field of every schema that names another record is followed: found by walking the schemas, so that a new field cannot be forgotten. */
import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { checkProject } from '../../src/records/check-project.ts';
import { formatFault } from '../../src/records/fault.ts';
import * as schemas from '../../src/records/schema.ts';
import { bare, defOf } from './constraints.ts';
import { SOUND } from './project.ts';
import { SHAPES, written } from './shapes.ts';

type Path = (string | number)[];

const SCHEMA_OF: Record<string, z.ZodType> = {
  figure: schemas.singleFigure, table: schemas.tableFigure, moved: schemas.movedFigure, split: schemas.splitFigure, factor: schemas.factor, class: schemas.factorClass,
  method: schemas.method, sling: schemas.sling, gap: schemas.gap, replacement: schemas.replacement, law: schemas.law, material: schemas.rackMaterial,
  rule: schemas.rule, correction: schemas.correction,
};

/** Paths in a filled-in record whose schema is the one sought. */
function pathsOf(sought: z.core.$ZodType, schema: z.core.$ZodType, value: unknown, path: Path): Path[] {
  const here = bare(schema);
  const def = defOf(here);
  if (here === sought) return value === undefined ? [] : [path];
  const below = (step: string | number, part: z.core.$ZodType) => pathsOf(sought, part, (value as Record<string | number, unknown>)[step], [...path, step]);
  if (value === null || value === undefined) return [];
  if (def.type === 'union') return (def.options ?? []).filter((option) => (option as z.ZodType).safeParse(value).success).flatMap((option) => pathsOf(sought, option, value, path));
  if (typeof value !== 'object') return [];
  if (def.type === 'object') return Object.entries(def.shape ?? {}).flatMap(([key, part]) => below(key, part));
  if (def.type === 'array') return (value as unknown[]).flatMap((_, i) => below(i, def.element as z.core.$ZodType));
  if (def.type === 'record') return Object.keys(value).flatMap((key) => below(key, def.valueType as z.core.$ZodType));
  return [];
}

const CASES = SHAPES.filter((shape) => shape.name in SCHEMA_OF).flatMap((shape) => {
  // In a table the denominator of a cell is an address here, so that it is walked into as well.
  const record = shape.name === 'table' ? JSON.parse(JSON.stringify(shape.record).replace('"unknotted"', '"lab-a/straight"')) : shape.record;
  return pathsOf(schemas.figureAddress, SCHEMA_OF[shape.name] as z.ZodType, record, []).map((path) => ({ name: `${shape.name}.${path.join('.')}`, file: shape.file, record, path }));
});

/** A study is the name of a laboratory, and no record's. */
const NAMES = SHAPES.filter((shape) => shape.name in SCHEMA_OF).flatMap((shape) =>
  pathsOf(schemas.slug, SCHEMA_OF[shape.name] as z.ZodType, shape.record, [])
    .filter((path) => path.at(-1) !== 'study')
    .map((path) => ({ name: `${shape.name}.${path.join('.')}`, file: shape.file, record: shape.record, path })));

describe('addresses of figures', () => {
  test('stand in every kind of record but a source', () => {
    expect(new Set(CASES.map((c) => c.name.split('.')[0]))).toEqual(new Set(Object.keys(SCHEMA_OF)));
  });

  test.each(CASES)('$name is followed', ({ file, record, path }) => {
    const broken = structuredClone(record) as Record<string, unknown>;
    const parent = path.slice(0, -1).reduce<unknown>((here, step) => (here as Record<string | number, unknown>)[step], broken) as Record<string | number, unknown>;
    parent[path.at(-1) as string] = 'institute/unheard-of';
    const yaml = written(broken);
    const faults = checkProject({ ...SOUND, [file]: yaml.text }).filter((fault) => fault.rule === 'references-exist' || fault.rule === 'moved-target-is-ordinary').map(formatFault);
    const place = `${file}:${yaml.valueAt(path)}`;
    expect(faults.filter((line) => line.startsWith(`${place} `) && line.includes('there is no figure at this address (got institute/unheard-of)'))).toHaveLength(1);
  });
});

describe('ids of other records', () => {
  test('stand in factors, classes, methods and gaps', () => {
    expect(NAMES.map((c) => c.name)).toEqual(expect.arrayContaining(['factor.class', 'factor.acts.multiplies', 'class.tau.borrowed', 'method.links.0.factors.0', 'gap.blocks.0.methods.0', 'gap.blocks.0.slings.0', 'gap.concerns.0', 'material.topics.knots.gaps.0']));
  });

  test.each(NAMES)('$name is followed', ({ file, record, path }) => {
    const broken = structuredClone(record) as Record<string, unknown>;
    const parent = path.slice(0, -1).reduce<unknown>((here, step) => (here as Record<string | number, unknown>)[step], broken) as Record<string | number, unknown>;
    parent[path.at(-1) as string] = 'unheard-of';
    const yaml = written(broken);
    const lines = checkProject({ ...SOUND, [file]: yaml.text }).filter((fault) => fault.rule === 'references-exist').map(formatFault);
    expect(lines.filter((line) => line.startsWith(`${file}:${yaml.valueAt(path)} `) && /there is no (?:factor|factor class|method|sling|gap) of this id \(got unheard-of\)/.test(line))).toHaveLength(1);
  });
});
