/** The register's file: JSON (RFC 8259) and its JSON Schema, checked by another program (ajv, draft 2020-12). */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { faultLine, readRegisterJson, registerJson, textOfFile } from '../../../src/rack/json-file.ts';
import { jsonLines } from '../../../src/rack/json-lines.ts';
import { addInspection, addItems, changeItem, emptyRegister, onRack } from '../../../src/rack/register.ts';
import { REGISTER_SCHEMA } from '../../../src/rack/schema.ts';
import { shapeFaults } from '../../../src/rack/shape.ts';
import type { Register } from '../../../src/rack/types.ts';
import { ROOT } from '../../support/step.ts';
import { register } from './arbitrary-register.ts';
import { by } from './histories.ts';

const validate = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false }).compile(REGISTER_SCHEMA);
const small = addInspection(addItems(emptyRegister(), by('copya'), [{ name: 'Red', ratingKn: 12 }]), by('copya'), 'copya-1-1', { day: '2026-11-25', findings: [], by: 'A', note: '' });
const file = registerJson(small);
const refusal = (text: string): string[] => {
  const read = readRegisterJson(text);
  return read.ok ? ['taken'] : read.faults.map(faultLine);
};

test('export, import and export again give the same bytes, and the schema accepts the file', () => {
  fc.assert(fc.property(register, (one) => {
    const written = registerJson(one);
    const read = readRegisterJson(written);
    expect(read).toEqual({ ok: true, value: one });
    expect(registerJson(one)).toBe(written);
    expect(validate(JSON.parse(written)), JSON.stringify(validate.errors)).toBe(true);
    expect(written).not.toContain('\r');
  }), { numRuns: 300 });
});

test('the bytes do not depend on the order in which keys and items were written', () => {
  const turned = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(turned);
    return typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries(value).reverse().map(([key, one]) => [key, turned(one)])) : value;
  };
  fc.assert(fc.property(register, (one) => {
    const other = turned({ ...one, items: [...one.items].reverse() }) as Register;
    expect(registerJson(other)).toBe(registerJson(one));
    const read = readRegisterJson(JSON.stringify(other));
    expect(read.ok && registerJson(read.value)).toBe(registerJson(one));
  }), { numRuns: 100 });
});

test('import and the other checker agree on what fits the schema, also in damaged files', () => {
  const strange = fc.oneof(fc.constantFrom<unknown>(null, true, 0, -1, 1.5, 1e6, '', 'x', '2019', [], {}, ['sun', 'sun'], { year: 2019 }, 'weekly'), fc.jsonValue({ maxDepth: 2 }));
  let refused = 0;
  fc.assert(fc.property(register, fc.nat(), fc.constantFrom('replace', 'drop', 'add'), strange, (one, at, how, value) => {
    const copy = JSON.parse(registerJson(one)) as Record<string, unknown>;
    const places: [Record<string, unknown>, string][] = [];
    const walk = (node: unknown): void => {
      if (typeof node !== 'object' || node === null) return;
      for (const key of Object.keys(node)) {
        places.push([node as Record<string, unknown>, key]);
        walk((node as Record<string, unknown>)[key]);
      }
    };
    walk(copy);
    const [node, key] = places[at % places.length]!;
    if (how === 'replace') node[key] = value;
    else if (how === 'add') node['more'] = value;
    else if (!Array.isArray(node)) delete node[key];
    const damaged = JSON.parse(JSON.stringify(copy)) as unknown;
    const fits = validate(damaged);
    expect(shapeFaults(REGISTER_SCHEMA, damaged).length === 0, JSON.stringify([how, key, value, validate.errors])).toBe(fits);
    refused += Number(!fits);
  }), { numRuns: 1500 });
  expect(refused).toBeGreaterThan(300);
});

test('any text at all is read or refused with a line, and never throws', () => {
  const check = (text: string): void => {
    const read = readRegisterJson(text);
    if (!read.ok) expect(read.faults.every(({ line, why }) => line >= 1 && line <= text.split('\n').length && why.length > 0)).toBe(true);
  };
  fc.assert(fc.property(fc.oneof(fc.string(), fc.json()), check));
  fc.assert(fc.property(register, fc.nat(), fc.nat({ max: 40 }), fc.string({ maxLength: 3 }), (one, at, cut, put) => {
    const text = registerJson(one);
    check(text.slice(0, at % text.length) + put + text.slice((at % text.length) + cut));
  }), { numRuns: 500 });
  check('['.repeat(100_000));
  check('{"a":'.repeat(100_000));
});

test('the place of a fault of grammar agrees with the language\u2019s own reader: what it takes, we take, and what it refuses, we refuse', () => {
  fc.assert(fc.property(fc.oneof(fc.json({ maxDepth: 3 }), fc.json({ maxDepth: 3 }).chain((text) => fc.tuple(fc.nat({ max: text.length }), fc.string({ maxLength: 2 })).map(([at, put]) => text.slice(0, at) + put + text.slice(at + 1)))), (text) => {
    let isRead = true;
    try { JSON.parse(text); } catch { isRead = false; }
    const { fault } = jsonLines(text);
    // A key that stands twice is grammar, and yet no register.
    if (fault?.why.includes('stands twice')) return;
    expect(fault === null, text).toBe(isRead);
  }), { numRuns: 2000 });
});

/** Line of a marker, counted in the text itself. */
const lineOf = (text: string, marker: string): number => text.slice(0, text.indexOf(marker)).split('\n').length;

describe('a file that cannot be taken', () => {
  const edited = (from: string, to: string): string => {
    expect(file).toContain(from);
    return file.replace(from, to);
  };
  test.each<[string, string, string, string]>([
    ['empty', '', '', 'the file ends where a value should stand'],
    ['cut off', file.slice(0, file.indexOf('"Red"') + 2), '"R', 'there is "\\"" where a value should stand'],
    ['with a comma too many', edited('"Red",', '"Red",,'), ',,', 'there is "," where a key in quotes should stand'],
    ['with a key written twice', edited('"name": "Red",', '"name": "Blue",\n   "name": "Red",'), '"Red"', 'the key "name" stands twice in one object'],
  ])('%s: says on which line and why', (_, text, marker, why) => {
    expect(refusal(text)).toEqual([`line ${lineOf(text, marker)}: ${why}`]);
  });

  test.each([
    ['of something else', '{"type": "FeatureCollection"}', 'this is no rack register: "format" must be "second-sling-rack"'],
    ['that is a list', '[1]', 'this is no rack register: "format" must be "second-sling-rack"'],
    ['of a newer form', edited('"version": 1', '"version": 2'), 'the file was written by a newer form of this page (version 2; this one reads 1). Reload the page, then import again'],
  ])('%s: says that it is not ours to read', (_, text, why) => {
    expect(refusal(text)).toEqual([`line 1: ${why}`]);
  });

  test.each<[string, string, string, string, string]>([
    ['with a number as text', edited('"ratingKn": 12', '"ratingKn": "12"'), '"ratingKn": "', '/items/0/ratingKn', 'must be a number from 1 to 40, or null (got "12")'],
    ['with an eye that nothing has', edited('"eye": null', '"eye": "hook"'), 'hook', '/items/0/eye', 'must be one of bare-wire, sleeved-wire, wire-under-bar, metal-bar, twin-eye, null (got "hook")'],
    ['with a key of its own', edited('"name": "Red"', '"maker": "x",\n   "name": "Red"'), '"maker"', '/items/0/maker', 'is not a key of this format'],
    ['without a key', edited('   "name": "Red",\n', ''), '"items": [', '/items/0', 'lacks "name"'],
    ['with a day that is none', edited('"2026-11-25",', '"2026-02-30",'), '2026-02-30', '/items/0/inspections/0/day', 'is no day of the calendar'],
    ['with an edit that is not counted', edited('"stamp": "1@', '"stamp": "9@'), '9@copya', '/items/0/stamp', '9@copya is an edit that /seen does not count'],
    ['with half a character', edited('"Red"', '"\\ud800"'), 'ud800', '/items/0/name', 'must be text of at most 200 characters (got "\\ud800")'],
  ])('%s: says on which line, where and why', (_, text, marker, pointer, why) => {
    // The object that lacks a key begins on the line after its list.
    const line = lineOf(text, marker) + Number(marker.endsWith('['));
    expect(refusal(text)).toEqual([`line ${line}, ${pointer}: ${why}`]);
  });

  test('with one id on two items, or an inspection without its stamp, is refused', () => {
    const [item] = small.items;
    expect(refusal(registerJson({ ...small, items: [item!, item!] }))[0]).toMatch(/^line \d+, \/items\/1\/id: copya-1-1 is the id of another item$/);
    expect(refusal(registerJson({ ...small, items: [{ ...item!, stamps: {} }] }))[0]).toMatch(/lacks its stamp \(inspections\/copya-2 in stamps\)$/);
  });

  test('with very many faults names the first twenty and says how many more there are', () => {
    const many = JSON.parse(file) as { items: unknown[] };
    many.items = Array.from({ length: 30 }, () => 1);
    expect(refusal(JSON.stringify(many)).slice(19)).toEqual(['line 1, /items/19: must be an object (got 1)', 'line 1: and 10 more']);
  });

  test('in another encoding is refused with its line', () => {
    const bytes = new TextEncoder().encode('a\nb\nc\u00e9');
    expect(textOfFile(bytes)).toEqual({ ok: true, value: 'a\nb\nc\u00e9' });
    expect(textOfFile(bytes.slice(0, -1))).toEqual({ ok: false, faults: [{ line: 3, pointer: null, why: 'the file is not written in UTF-8, or is damaged here' }] });
    expect(textOfFile(Uint8Array.of(0xff, 0xfe, 0x41, 0)).ok).toBe(false);
  });
});

test('a file that begins with a byte order mark, or was laid out again, is the same register', () => {
  expect(refusal(`\uFEFF${file}`)).toEqual(['taken']);
  expect(readRegisterJson(JSON.stringify(JSON.parse(file)).replaceAll(',', ' ,\r\n'))).toEqual({ ok: true, value: small });
});

test('names that objects have of themselves are names like others', () => {
  const one = changeItem(addItems(emptyRegister(), by('constructor'), [{ name: '__proto__' }]), by('constructor'), 'constructor-1-1', { notes: 'toString' });
  expect(one.seen).toEqual({ constructor: 2 });
  expect(readRegisterJson(registerJson(one))).toEqual({ ok: true, value: one });
  expect(refusal(file.replace('"seen": {', '"seen": {\n  "__proto__": 1,'))[0]).toMatch(/^line 6, \/seen\/__proto__: "__proto__" is not the name of a copy$/);
});

describe('the example rack', () => {
  const example = readFileSync(join(ROOT, 'data/demo/rack.json'), 'utf8');
  const read = readRegisterJson(example);

  test('is a file of this format, to the byte, and says that it is invented', () => {
    expect(read.ok ? registerJson(read.value) : refusal(example)).toBe(example);
    expect(validate(JSON.parse(example))).toBe(true);
    expect(read.ok && read.value.invented).toMatch(/invented/);
  });

  test('has twenty-four devices, each an item, and one of them off the rack', () => {
    const items = read.ok ? read.value.items : [];
    expect(items).toHaveLength(24);
    expect(items.every(({ count }) => count === 1)).toBe(true);
    expect(read.ok && onRack(read.value).length).toBe(items.length - 1);
  });
});
