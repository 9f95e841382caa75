/** Turns what the schemas object to into faults in plain words, at the place of the value. */
import type { z } from 'zod';
import type { Fault } from './fault.ts';
import { shown } from './fault.ts';
import { didYouMean } from './nearest-name.ts';
import type { ParsedYaml, Path } from './yaml.ts';

type Issue = z.core.$ZodIssue;

const TYPES: Record<string, [string, string]> = {
  string: ['is not a text', 'Write words; put quotes round a text that looks like a number.'],
  number: ['is not a number', 'Write a number with a decimal point, without unit, sign words or spaces.'],
  int: ['is not a whole number', 'Write a whole number.'],
  boolean: ['is not true or false', 'Write true or false, without quotes.'],
  array: ['is not a list', 'Write a list: [a, b].'],
  object: ['is not a group of fields', 'Write fields, one a line.'],
  record: ['is not a group of fields', 'Write fields, one a line.'],
  tuple: ['is not a pair of numbers', 'Write two numbers: [from, to].'],
};

/** What to do about what the schemas say in their own words. */
const ADVICE: Record<string, string> = {
  'is not a lower-case name with hyphens': 'Use a to z, digits and single hyphens.',
  'is not an address like source/result or source/result#cell':
    'Write the path of a figure below data/figures/, without its ending.',
  'is not a short name': 'Use letters and digits, a small letter first.',
  'is not a lower-case cell name': 'Use a to z, digits, hyphens and points.',
  'is not a year, month, day or the word unknown': 'Write "2020", "2020-05" or "2020-05-31", in quotes, or unknown.',
  'is not a two-letter language code': 'Write en, de, fr and so on.',
  'the low end is not below the high end': 'Put the smaller number first.',
  'extremes of n need an n of two or more': 'Add n, or choose another kind.',
  'takes neither a bearing nor a diameter': 'Add bearingMm or diameterMm, or remove the entry.',
  'what is taken off needs a share to take it from, and a why': 'Add share and why, or remove lessWidths.',
  'shows no figure, and says of no gap that it is open and of nothing that it was not found': 'Add figures or gaps, or say in none what was not found.',
  'is not one sentence with its full stop': 'Write one sentence that closes with a full stop; the rest goes below.',
  'is not a drawing like basket/right': 'Write the id of a method, a slash, and right, wrong or a step such as step-1.',
  'is more than open, and does not say to whom it was reported': 'Add reported: to whom, and when.',
};
const VALUE_ADVICE =
  'Write a number, or choose a form: { tests: [...] }, { mean, sd, n }, { low, high, kind }, { atLeast }, { atMost }, { statement }.';

/** One shape fault for each thing that is wrong; the paths of what is wrong come with them, for the salvage of the rest. */
export function shapeFaults(
  what: string,
  schema: z.ZodType,
  error: z.ZodError,
  yaml: ParsedYaml,
): { fault: Fault; path: Path; missing: boolean; extra: readonly string[] }[] {
  return error.issues
    .flatMap((issue) => expand(issue, yaml.data))
    .map((issue) => {
      const path = issue.path as Path;
      const field = path.length ? path.join('.') : what;
      const value = at(yaml.data, path);
      const absent = value === undefined;
      const extra = issue.code === 'unrecognized_keys' ? issue.keys : [];
      const make = (subject: string, problem: string, got: unknown, advice: string, position = yaml.at(path)) => ({
        fault: {
          rule: 'shape',
          at: position,
          subject,
          problem,
          got: got === undefined ? undefined : shown(got),
          advice,
        },
        path,
        missing: absent,
        extra,
      });
      if (issue.code === 'unrecognized_keys') {
        const key = issue.keys[0] as string;
        return make(
          [...path, key].join('.'),
          'is no field of this record',
          undefined,
          didYouMean(key, fieldsAt(schema, path), 'Remove it.'),
          yaml.keyAt([...path, key]),
        );
      }
      if (absent) return make(field, 'is missing', undefined, `Add ${path.at(-1) ?? what}: ${hint(issue)}.`);
      switch (issue.code) {
        case 'invalid_type': {
          if (value === null)
            return make(field, 'is empty', undefined, 'Fill it, or remove the line where it is optional.');
          const [problem, advice] = TYPES[issue.expected] ?? [`is not a ${issue.expected}`, 'Correct it.'];
          const comma = issue.expected === 'number' && typeof value === 'string' && /^\d+,\d+$/.test(value);
          return make(field, problem, value, comma ? `Write a decimal point: ${value.replace(',', '.')}.` : advice);
        }
        case 'invalid_value': {
          const known = issue.values.map(String);
          const list = `Write one of: ${known.join(', ')}.`;
          return make(
            field,
            known.length === 1 ? `is not ${known[0]}` : 'is none of the known words',
            value,
            typeof value === 'string' ? didYouMean(value, known, list) : list,
          );
        }
        case 'too_small':
          if (issue.origin === 'array' || issue.origin === 'string')
            return make(
              field,
              issue.origin === 'array' ? `has fewer than ${issue.minimum} entries` : 'is empty',
              value,
              issue.origin === 'array' ? 'Add what is missing, or remove the field.' : 'Write words.',
            );
          return make(
            field,
            issue.inclusive ? `is below ${issue.minimum}` : `is not above ${issue.minimum}`,
            value,
            'Look the number up again.',
          );
        case 'too_big':
          return make(field, `is above ${issue.maximum}`, value, 'Look the number up again.');
        case 'invalid_format':
          if (issue.format === 'date')
            return make(field, 'is not a day of the calendar', value, 'Write it as "2026-01-31", in quotes.');
          if (issue.format === 'url')
            return make(field, 'is not a web address', value, 'Write it whole, from https:// on.');
          if (typeof value === 'string' && !value.includes('/')) {
            const known = wordsAt(schema, path); // one of the named denominators was meant, not an address
            if (known.length)
              return make(
                field,
                'is none of the known words',
                value,
                didYouMean(value, known, `Write one of: ${known.join(', ')}.`),
              );
          }
          return make(field, issue.message, value, ADVICE[issue.message] ?? 'Correct it.');
        case 'invalid_key': {
          const inner = issue.issues[0]?.message ?? 'is not a name that can stand here';
          return make(field, inner, path.at(-1), ADVICE[inner] ?? 'Rename it.', yaml.keyAt(path));
        }
        default:
          return make(field, issue.message, value, ADVICE[issue.message] ?? VALUE_ADVICE);
      }
    });
}

/** Issues of a union stand in its branches: takes the branch that came furthest; one unknown field makes one issue. */
function expand(issue: Issue, data: unknown): Issue[] {
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => ({ ...issue, keys: [key] }) as Issue);
  if (issue.code !== 'invalid_union') return [issue];
  const value = at(data, issue.path as Path);
  if (value === undefined) return [issue];
  const depth = (branch: readonly Issue[]) => {
    const wrongKind = branch.some(
      (i) =>
        i.path.length === 0 && (i.code === 'invalid_type' || (i.code === 'invalid_value' && typeof value === 'object')),
    );
    const unknown = branch.filter((i) => i.code === 'unrecognized_keys').length;
    const missing = branch.filter((i) => i.path.length > 0 && at(value, i.path as Path) === undefined).length;
    return wrongKind ? -100 : -10 * unknown - missing;
  };
  const plain = issue.errors.flatMap((branch) =>
    branch.flatMap((i) => (i.path.length === 0 && i.code === 'invalid_value' ? i.values.map(String) : [])),
  );
  const best = [...issue.errors].sort((a, b) => depth(b) - depth(a))[0] ?? [];
  const own = issue.message !== 'Invalid input';
  if (typeof value !== 'object' || own) {
    const pattern = issue.errors.flat().find((i) => i.code === 'invalid_format');
    if (own) return [{ code: 'custom', path: issue.path, message: issue.message, input: value } as Issue];
    if (plain.length && !(pattern && typeof value === 'string' && /[/#]/.test(value)))
      return [{ code: 'invalid_value', values: plain, path: issue.path, message: '', input: value } as Issue];
  }
  return best.flatMap((inner) => expand({ ...inner, path: [...issue.path, ...inner.path] } as Issue, data));
}

/** Names of the fields that a schema knows at a path; empty where it is no group of fields. */
export function fieldsAt(schema: z.ZodType, path: Path): string[] {
  return Object.keys((schemaAt(schema, path)?._zod.def as { shape?: object } | undefined)?.shape ?? {});
}

/** Words that a union at a path allows beside its other forms. */
function wordsAt(schema: z.ZodType, path: Path): string[] {
  const options = (schemaAt(schema, path)?._zod.def as { options?: z.core.$ZodType[] } | undefined)?.options ?? [];
  return options.flatMap((option) =>
    Object.values((option._zod.def as { entries?: Record<string, string> }).entries ?? {}),
  );
}

/** The schema at a path, without optional and default wrappings. */
function schemaAt(schema: z.ZodType, path: Path): z.core.$ZodType | undefined {
  let here: z.core.$ZodType | undefined = schema;
  for (const step of path) {
    const def = bare(here)?._zod.def as
      | { shape?: Record<string, z.core.$ZodType>; element?: z.core.$ZodType; valueType?: z.core.$ZodType }
      | undefined;
    here = def?.shape?.[String(step)] ?? def?.element ?? def?.valueType;
  }
  return bare(here);
}

/** A schema without its optional and default wrappings. */
function bare(schema: z.core.$ZodType | undefined): z.core.$ZodType | undefined {
  let here = schema;
  for (;;) {
    const inner = (here?._zod.def as { innerType?: z.core.$ZodType } | undefined)?.innerType;
    if (!inner) return here;
    here = inner;
  }
}

function hint(issue: Issue): string {
  if (issue.code === 'invalid_value')
    return issue.values.length > 8
      ? `one of ${issue.values.slice(0, 8).join(', ')} and others`
      : `one of ${issue.values.join(', ')}`;
  if (issue.code === 'invalid_type') {
    const words: Record<string, string> = {
      string: 'a text',
      number: 'a number',
      int: 'a whole number',
      boolean: 'true or false',
      array: 'a list',
      object: 'a group of fields',
      record: 'a group of fields',
      tuple: 'two numbers',
    };
    return words[issue.expected] ?? issue.expected;
  }
  return 'a value';
}

/** The value at a path, or undefined. */
export function at(data: unknown, path: Path): unknown {
  let value = data;
  for (const step of path) {
    if (value === null || typeof value !== 'object' || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}
