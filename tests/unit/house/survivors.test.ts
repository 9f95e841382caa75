/** The list of changes that no test notices stays true of the code: each names a line that is still there, and a reason. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { acceptedSurvivors, nameOfChange } from '../../mutation/survivors.ts';
import { leftAlone } from '../../mutation/messages.ts';
import { changedText } from '../../mutation/runner.ts';
import { ROOT } from '../../support/step.ts';

test('each accepted survivor stands on a line of its file, with a reason', () => {
  const gone: string[] = [];
  for (const { file, why, changes } of acceptedSurvivors()) {
    expect(why.length, `${file}: ${changes[0]}`).toBeGreaterThan(20);
    const lines = readFileSync(join(ROOT, file), 'utf8').split('\n').map((line) => line.replace(/\s+/g, ' ').trim());
    for (const change of changes) {
      const line = change.slice(0, change.lastIndexOf(' | ')).replace(/\.\.\.$/, '');
      if (!lines.some((one) => one.startsWith(line))) gone.push(`${file}: ${change}`);
    }
  }
  expect(gone, 'change or gone: run npm run mutate on these files').toEqual([]);
});

test('a change is named by its line and what becomes of it, also over several lines', () => {
  const source = 'const a = 1;\n  if (b < c) {\n    d();\n  }\n';
  expect(nameOfChange(source, { replacement: 'b <= c', location: { start: { line: 2, column: 7 }, end: { line: 2, column: 12 } } })).toBe('if (b < c) { | b < c => b <= c');
  expect(nameOfChange(source, { replacement: '{}', location: { start: { line: 2, column: 14 }, end: { line: 4, column: 4 } } })).toBe('if (b < c) { | { d(); } => {}');
});

test('only the words of a guard are left alone, not the guard', () => {
  const thrown = { node: { type: 'NewExpression', callee: { name: 'RangeError' } }, parentPath: null };
  expect(leftAlone({ node: { type: 'TemplateLiteral' }, parentPath: thrown })).toBe('the words of a guard');
  expect(leftAlone({ node: thrown.node.callee as never, parentPath: thrown })).toBeUndefined();
  expect(leftAlone({ node: { type: 'StringLiteral' }, parentPath: { node: { type: 'NewExpression', callee: { name: 'Error' } }, parentPath: null } })).toBeUndefined();
  expect(leftAlone(thrown)).toBeUndefined();
});

test('a change is put into the text at its place, an expression in brackets', () => {
  const source = 'const a = b +\n  c * 2;\n{ d(); }\n';
  const at = (line: number, from: number, to: number) => ({ start: { line, column: from }, end: { line, column: to } });
  expect(changedText(source, { mutatorName: 'ArithmeticOperator', replacement: 'c / 2', location: at(1, 2, 7) })).toBe('const a = b +\n  (c / 2);\n{ d(); }\n');
  expect(changedText(source, { mutatorName: 'BlockStatement', replacement: '{}', location: at(2, 0, 8) })).toBe('const a = b +\n  c * 2;\n{}\n');
});
