/** A small calculator for the formulas of derived figures: numbers, names, `+ - * /`, parentheses, `sqrt(x)`, `mean(a, b, ...)`. */

/** Thrown by a formula that cannot be read or worked out; `index` is where in the formula, from 0. */
export class FormulaError extends Error {
  readonly index: number;
  constructor(message: string, index: number) {
    super(message);
    this.name = 'FormulaError';
    this.index = index;
  }
}

interface Token {
  kind: 'number' | 'name' | 'sign' | 'end';
  text: string;
  index: number;
}

function tokens(formula: string): Token[] {
  const out: Token[] = [];
  const pattern = /\s*(?:(\d+(?:\.\d+)?)|([A-Za-z][A-Za-z0-9]*)|([-+*/(),]))/y;
  let index = 0;
  while (index < formula.trimEnd().length) {
    pattern.lastIndex = index;
    const match = pattern.exec(formula);
    if (!match) {
      const bad = index + (/^\s*/.exec(formula.slice(index))?.[0].length ?? 0);
      throw new FormulaError(`"${formula[bad]}" has no meaning in a formula`, bad);
    }
    index = pattern.lastIndex;
    const text = (match[1] ?? match[2] ?? match[3]) as string;
    out.push({ kind: match[1] ? 'number' : match[2] ? 'name' : 'sign', text, index: index - text.length });
  }
  out.push({ kind: 'end', text: '', index: formula.length });
  return out;
}

/**
 * Works out a formula over named numbers. Multiplication and division bind
 * stronger than addition and subtraction, equals go from left to right.
 * Throws a FormulaError on a name that is not given, a fault of writing, a
 * division by zero, a root of a negative number, or a name that is never used.
 */
export function evaluateFormula(formula: string, inputs: Readonly<Record<string, number>>): number {
  const list = tokens(formula);
  let next = 0;
  const used = new Set<string>();
  const peek = () => list[next] as Token;
  const take = (text: string) => {
    if (peek().kind === 'sign' && peek().text === text) {
      next++;
      return true;
    }
    return false;
  };
  const expect = (text: string) => {
    if (!take(text))
      throw new FormulaError(
        peek().kind === 'end' ? `"${text}" is missing at the end` : `"${text}" is missing before "${peek().text}"`,
        peek().index,
      );
  };
  const sum = (): number => {
    let value = product();
    for (;;) {
      if (take('+')) value += product();
      else if (take('-')) value -= product();
      else return value;
    }
  };
  const product = (): number => {
    let value = signed();
    for (;;) {
      if (take('*')) value *= signed();
      else if (peek().text === '/') {
        const { index } = peek();
        next++;
        const divisor = signed();
        if (divisor === 0) throw new FormulaError('divides by zero', index);
        value /= divisor;
      } else return value;
    }
  };
  const signed = (): number => (take('-') ? -signed() : atom());
  const atom = (): number => {
    const token = peek();
    next++;
    if (token.kind === 'number') return Number(token.text);
    if (token.kind === 'sign' && token.text === '(') {
      const value = sum();
      expect(')');
      return value;
    }
    if (token.kind !== 'name')
      throw new FormulaError(
        token.kind === 'end' ? 'ends too early' : `"${token.text}" stands where a number or a name should be`,
        token.index,
      );
    if (token.text === 'sqrt' || token.text === 'mean') {
      expect('(');
      const values = [sum()];
      while (take(',')) values.push(sum());
      expect(')');
      if (token.text === 'mean') return values.reduce((a, b) => a + b, 0) / values.length;
      if (values.length !== 1) throw new FormulaError('sqrt takes one number', token.index);
      if ((values[0] as number) < 0) throw new FormulaError('takes the root of a negative number', token.index);
      return Math.sqrt(values[0] as number);
    }
    const value = Object.hasOwn(inputs, token.text) ? inputs[token.text] : undefined;
    if (value === undefined) throw new FormulaError(`"${token.text}" is not one of the inputs`, token.index);
    used.add(token.text);
    return value;
  };
  const result = sum();
  if (peek().kind !== 'end') throw new FormulaError(`"${peek().text}" is left over`, peek().index);
  const idle = Object.keys(inputs).find((name) => !used.has(name));
  if (idle !== undefined) throw new FormulaError(`the input "${idle}" is never used`, 0);
  return result;
}
