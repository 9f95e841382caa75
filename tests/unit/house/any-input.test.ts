/**
 * Everything that reads what a person typed, pasted, opened or followed takes any of it: it never throws, never hands on a
 * number that is none, and says why it does not use something. Which readers there are is read from the sources, so that
 * a new one cannot be left out. What is expected follows from that rule alone.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeText } from '../../../src/break-tests/decode-text.ts';
import { readHeading, readUnit } from '../../../src/break-tests/column-units.ts';
import { readNumberCell } from '../../../src/break-tests/read-number.ts';
import { readTable } from '../../../src/break-tests/read-table.ts';
import { pullsOfTable, likelyColumns, readPullTable } from '../../../src/break-tests/table-pulls.ts';
import { readFall, FALL_CHOICES, FALL_FIELDS } from '../../../src/falls/read-fall.ts';
import { readQuantity } from '../../../src/falls/read-quantity.ts';
import { parseAnalysisLink } from '../../../src/links/analysis-link.ts';
import { parseCostLink } from '../../../src/links/cost-link.ts';
import { parseFallBeside } from '../../../src/links/fall-beside-link.ts';
import { parseFallLink, rigOfAddress } from '../../../src/links/fall-link.ts';
import { parseOwnTests } from '../../../src/links/own-tests-link.ts';
import { parseLink } from '../../../src/links/parse-link.ts';
import { parsePlanLink } from '../../../src/links/plan-link.ts';
import { parsePath } from '../../../src/links/prebuilt-path.ts';
import { readNumber } from '../../../src/links/read-number.ts';
import { comparisonToSend, ownAddress, parseSendLink } from '../../../src/links/send-link.ts';
import { besideOf } from '../../../src/links/serialise-link.ts';
import { parseVerdictLink } from '../../../src/links/verdict-link.ts';
import { readRegisterCsv } from '../../../src/rack/csv-file.ts';
import { readRegisterJson, textOfFile } from '../../../src/rack/json-file.ts';
import { parsePartDay } from '../../../src/rack/part-day.ts';
import { readPasted } from '../../../src/rack/paste.ts';
import { readAmount } from '../../../src/replacement/read-amount.ts';
import { GENERAL_KEYS, MOST_KINDS, nothingWritten, OFFER_FIELDS, readCost, WAYS } from '../../../src/replacement/read-words.ts';
import { nothingKnown, QUESTIONS, readHistory, WORD_KEYS } from '../../../src/retirement/read-history.ts';
import { readLabel } from '../../../src/retirement/read-label.ts';
import { filesUnder } from '../../support/tree.ts';
import { CONSTANTS } from '../falls/constants.ts';

const CASES = 1500;
const slings = ['hmpe-8', 'hmpe-10', 'nylon-20'];
const vocabulary = { slings };
const site = { origin: 'https://example.org', base: '/' };
const bytes = (text: string) => new TextEncoder().encode(text);

/** Each reader by the name of its function, and how a text is put to it. */
const READERS: Readonly<Record<string, (text: string) => unknown>> = {
  parseLink: (text) => parseLink(text, vocabulary),
  parsePath: (text) => parsePath(text, vocabulary),
  parseOwnTests: (text) => parseOwnTests(text, { methods: ['basket', 'girth-hitch'], slings }),
  parseFallBeside: (text) => parseFallBeside(text),
  parseFallLink: (text) => parseFallLink(text, { fields: FALL_FIELDS, choices: FALL_CHOICES }),
  parseCostLink: (text) => parseCostLink(text, { general: GENERAL_KEYS, offers: OFFER_FIELDS, ways: WAYS, mostKinds: MOST_KINDS }),
  parseAnalysisLink: (text) => parseAnalysisLink(text, ['kN', 'N', 'lbf']),
  parsePlanLink: (text) => parsePlanLink(text),
  parseVerdictLink: (text) => parseVerdictLink(text, { keys: WORD_KEYS, questions: QUESTIONS }),
  parseSendLink: (text) => parseSendLink(text),
  ownAddress: (text) => ownAddress(text, site),
  comparisonToSend: (text) => {
    const sent = ownAddress(text, site);
    return 'address' in sent ? comparisonToSend(sent.address, site, vocabulary, { evidence: '2026-11-25.1', model: 1 }) : null;
  },
  rigOfAddress: (text) => [rigOfAddress('/compare/', text), rigOfAddress(text, '?v=1&rating=9'), besideOf(text)],
  readNumber: (text) => readNumber(text, { low: 1, high: 40, unit: 'kN' }),
  readQuantity: (text) => readQuantity(text, { low: 1, high: 40, unit: 'm', others: { ft: 0.3048 } }),
  readFall: (text) => readFall({ ...Object.fromEntries(FALL_FIELDS.map((field) => [field, text])) } as never, CONSTANTS),
  readAmount: (text) => readAmount(text, { low: 0, high: 1e6 }),
  readCost: (text) => readCost({ ...nothingWritten(), general: Object.fromEntries(GENERAL_KEYS.map((key) => [key, text])) as never, kinds: [{ count: text, name: text, fresh: text, refused: '' }] }),
  readHistory: (text) => readHistory({ ...nothingKnown(), words: Object.fromEntries(WORD_KEYS.map((key) => [key, text])) as never }, '2026-11-29'),
  readLabel: (text) => readLabel(text),
  parsePartDay: (text) => parsePartDay(text),
  readPasted: (text) => readPasted(text),
  readRegisterJson: (text) => readRegisterJson(text),
  readRegisterCsv: (text) => readRegisterCsv(text),
  textOfFile: (text) => textOfFile(bytes(text)),
  decodeText: (text) => decodeText(bytes(text)),
  readNumberCell: (text) => readNumberCell(text),
  readUnit: (text) => readUnit(text),
  readHeading: (text) => readHeading(text),
  readTable: (text) => readTable(text),
  readPullTable: (text) => {
    const read = readPullTable(text);
    if (!('table' in read)) return read;
    const columns = likelyColumns(read.table);
    // Without a column of forces the page asks which one is meant.
    return columns.force === null ? [read, columns] : [read, pullsOfTable(read.table, columns)];
  },
};
/** Functions whose name begins alike and that read no text of a person: they get readers, or what was read already. */
const NO_READERS = ['readEach', 'readTrace'];

/** Pieces of what each grammar knows, of other grammars, and of what breaks parsers. */
const PIECES = [
  'v=1', 'v=', 'rating=12', 'rating=12,5', 'rating=1e999', 'eye=bare-wire', 'sling=hmpe-8', 'bearing=unmeasured', 't=basket~hmpe-8~bare-wire~4~-~9~>10', 'f=4~9~v%3D1', 'to=%2Fcompare%2F', 'kinds=4~2', 'p=11.2~9.2', 'unit=kN',
  'kg=80', 'up=10 ft', 'yes=light', 'made=2019-02-30', '&', '=', '~', ';', ',', '\t', '\n', '\r\n', '"', '""', "'", '|', '%', '%zz', '%00', '\u0000', '\ufeff', '\u2028', '\ud800', '__proto__', 'constructor', 'toString', 'NaN', '-Infinity', '1e308', '9'.repeat(400),
  '0x10', '-0', '１２', '١٢', '½', '12.5', '12,5', '1.234,5', '1 234', '2019', '2019-05', '31.5.2019', '05/2019', '29/02/2023', '0000', 'force_kN', 'kN', 'lbf', 'force (lbf)', 'mode', 'pull', 'time_s', '>13.2', '12+', 'n/a', '-', '{', '}', '[', ']', '{"format":"second-sling-rack","version":1}',
  'id,name', '/compare/9/bare-wire/hmpe-8/', '//', 'https://example.org/', 'javascript:', '../', '\\', '#', '?', '<script>', '${x}', '=HYPERLINK("x")', '@x', 'é', '紐', '👋🏽', '\u202e',
];
const near = fc.array(fc.oneof({ weight: 5, arbitrary: fc.constantFrom(...PIECES) }, { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 6 }) }), { maxLength: 14 }).map((pieces) => pieces.join(''));
const parted = fc.tuple(fc.constantFrom('&', ',', ';', '\t', '\n', '~', ' '), fc.array(fc.constantFrom(...PIECES), { maxLength: 14 })).map(([sign, pieces]) => pieces.join(sign));
const anyText = fc.oneof(fc.constantFrom(...PIECES), near, parted, fc.string({ unit: 'binary', maxLength: 60 }), fc.json({ maxDepth: 3 }));

/** Places in what a reader gave where a number is none. */
function noNumbers(value: unknown, at = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at}: ${value}`];
  if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return [];
  return Object.entries(value).flatMap(([key, part]) => noNumbers(part, `${at}/${key}`));
}

describe('any input', () => {
  for (const [name, read] of Object.entries(READERS)) {
    test(`${name} takes ${CASES.toLocaleString('en')} texts of any kind, and hands on no number that is none`, () => {
      let told = 0;
      fc.assert(fc.property(anyText, (text) => {
        const given = read(text);
        expect(noNumbers(given)).toEqual([]);
        if (given !== null && given !== undefined) told += 1;
        // The same text is read the same way: nothing is remembered from one to the next.
        expect(read(text)).toEqual(given);
      }), { numRuns: CASES });
      // Each one says something of at least some of them: what never answers is not put to the test.
      expect(told).toBeGreaterThan(0);
    });
  }

  test('a text of a hundred thousand signs is no matter to any of them', () => {
    for (const [name, read] of Object.entries(READERS)) {
      for (const sign of ['9', ' ', '&', '~', '"', '(', 'a=1&', '1,2\n', '\t', '-', '<', '[']) {
        const text = sign.repeat(Math.ceil(100_000 / sign.length));
        expect(() => read(text), `${name}: ${JSON.stringify(sign)}`).not.toThrow();
      }
    }
  });

  test('every reader of the engines is put to it', () => {
    const exported = filesUnder('src').filter((path) => /^src\/(?:links|rack|replacement|retirement|falls|break-tests)\/.*\.ts$/.test(path))
      .flatMap((path) => [...readFileSync(path, 'utf8').matchAll(/^export (?:function|const) ((?:parse|read)[A-Z]\w*)/gm)].map(([, name]) => name as string));
    expect(exported.length).toBeGreaterThan(20);
    expect([...new Set(exported)].filter((name) => !(name in READERS) && !NO_READERS.includes(name))).toEqual([]);
  });
});
