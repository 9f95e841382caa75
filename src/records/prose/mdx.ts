/** Readable text of `.mdx` files, front matter included. */
import { parse } from '@astrojs/compiler-rs';
import { isScalar, parseDocument, visit } from 'yaml';
import { mdxToMdast } from 'satteri';
import { gatherJsx } from './jsx.ts';
import { type Prose, RunGatherer } from './run.ts';

interface Node {
  type: string;
  position?: { start: { offset?: number }; end: { offset?: number } };
  children?: Node[];
  value?: unknown;
  name?: string | null;
  url?: string;
  alt?: string | null;
  title?: string | null;
  attributes?: { type: string; name?: string; value?: unknown }[];
}

/** What is looked at first in an expression between braces. */
interface Expression {
  type: string;
  value?: unknown;
  expressions?: unknown[];
  start: number;
  end: number;
}

const EXEMPT: ReadonlySet<string> = new Set(['Fig', 'time', 'cite']);
/** Attributes that hold an address or a name of code, never a sentence. */
const CODE_ATTRIBUTES: ReadonlySet<string> = new Set(['class', 'className', 'id', 'href', 'src', 'rel', 'lang']);
const INLINE: ReadonlySet<string> = new Set([
  'text',
  'strong',
  'emphasis',
  'delete',
  'link',
  'linkReference',
  'inlineCode',
  'mdxTextExpression',
  'mdxJsxTextElement',
  'image',
  'imageReference',
  'break',
  'footnoteReference',
]);

export function proseOfMdx(source: string): Prose {
  const gatherer = new RunGatherer();
  gatherFrontMatter(source, gatherer);
  let tree: Node;
  try {
    tree = mdxToMdast(source) as Node;
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const [, line, column] = /^(\d+):(\d+):/.exec(message) ?? [];
    gatherer.prose.failures.push({
      offset: offsetOf(source, Number(line ?? 1), Number(column ?? 1)),
      message: message.replace(/^\d+:\d+: | \(mdx[\w:-]+\)$/g, ''),
    });
    return gatherer.prose;
  }
  visitNode(tree);
  gatherer.end();
  return gatherer.prose;

  function visitNode(node: Node): void {
    const start = node.position?.start.offset ?? 0;
    const end = node.position?.end.offset ?? start;
    const inline = INLINE.has(node.type);
    if (!inline) gatherer.end();
    switch (node.type) {
      case 'yaml':
      case 'toml':
        return;
      case 'text':
        gatherer.add(source, start, end);
        break;
      case 'inlineCode':
      case 'code':
        gatherer.plain(source.slice(start, end).replace(/`/g, '\u200b'), start);
        break;
      case 'break':
        gatherer.plain(' ', start);
        break;
      case 'image':
        phrase(node.alt, start, end);
        phrase(node.title, start, end);
        gatherer.opaque(start);
        break;
      case 'definition':
        phrase(node.title, start, end);
        break;
      case 'link':
        for (const child of node.children ?? []) visitNode(child);
        phrase(node.title, start, end);
        break;
      case 'mdxjsEsm':
        expression(String(node.value), start, end, false);
        break;
      case 'mdxTextExpression':
      case 'mdxFlowExpression':
        expression(String(node.value), start, end, true);
        break;
      case 'mdxJsxTextElement':
      case 'mdxJsxFlowElement':
        element(node, start, end);
        break;
      default:
        for (const child of node.children ?? []) visitNode(child);
    }
    if (!inline) gatherer.end();
  }

  /** Text that the tree gives without its place: looked up in the file between two offsets. */
  function phrase(text: string | null | undefined, start: number, end: number): void {
    if (!text) return;
    const from = source.indexOf(text, start);
    if (from >= 0 && from < end) gatherer.apart('attribute', source, from, from + text.length);
    else gatherer.apartAt('attribute', text, start);
  }

  function expression(code: string, start: number, end: number, flow: boolean): void {
    const found = source.indexOf(code, start);
    if (found < 0 || found + code.length > end) {
      // The parser took out quotation marks or indentation: its text is read, and all of it stands at the start.
      const inner = new RunGatherer();
      gatherExpression(code, code, 0, 0, flow, inner);
      inner.end();
      for (const run of inner.prose.runs) gatherer.apartAt('code', run.text, start);
      for (const { id } of inner.prose.mentions) gatherer.prose.mentions.push({ id, offset: start });
      if (flow) gatherer.opaque(start);
      return;
    }
    gatherExpression(code, source, found, start, flow, gatherer);
  }

  /** Reads an expression whose text stands at `from` in `text`. */
  function gatherExpression(
    code: string,
    text: string,
    from: number,
    start: number,
    flow: boolean,
    into: RunGatherer,
  ): void {
    const [before, after] = flow ? ['<>{', '}</>'] : ['---\n', '\n---\n'];
    const { ast } = parse(`${before}${code}${after}`);
    const piece = { text: code, shift: from - before.length, source: text };
    const whole = ast as unknown as { body: { children?: { expression?: Expression }[] }[] };
    const root = flow ? whole.body[0]?.children?.[0]?.expression : undefined;
    const plainTemplate = root?.type === 'TemplateLiteral' && root.expressions?.length === 0;
    if (root && (plainTemplate || (root.type === 'Literal' && typeof root.value === 'string'))) {
      into.add(text, root.start + piece.shift + 1, root.end + piece.shift - 1);
      return;
    }
    if (root?.type === 'Literal' && typeof root.value === 'number') {
      into.plain(String(root.value), root.start + piece.shift);
      return;
    }
    if (flow) into.opaque(start);
    const kept = into.hold();
    gatherJsx(flow ? root : ast, piece, into);
    into.resume(kept);
  }

  function element(node: Node, start: number, end: number): void {
    const first = node.children?.[0]?.position?.start.offset ?? end;
    let from = start;
    for (const attribute of node.attributes ?? []) {
      const text =
        typeof attribute.value === 'string' ? attribute.value : (attribute.value as { value?: string } | null)?.value;
      if (text === undefined || text === null) continue;
      const place = source.indexOf(
        text,
        attribute.name ? source.indexOf(attribute.name, from) + attribute.name.length : from,
      );
      if (place < 0 || place > first) {
        if (typeof attribute.value === 'string') gatherer.apartAt('attribute', text, start);
        else expression(text, start, start, true);
        continue;
      }
      from = place + text.length;
      if (node.name === 'Fig' && attribute.name === 'id') {
        const id = typeof attribute.value === 'string' ? text : /^\s*(['"`])([^'"`$]*)\1\s*$/.exec(text)?.[2];
        if (id !== undefined) gatherer.prose.mentions.push({ id, offset: place + text.indexOf(id) });
        continue;
      }
      if (attribute.name && CODE_ATTRIBUTES.has(attribute.name)) continue;
      if (typeof attribute.value === 'string') gatherer.apart('attribute', source, place, place + text.length);
      else {
        const kept = gatherer.hold();
        expression(text, place, place + text.length, true);
        gatherer.resume(kept);
      }
    }
    if (node.name && EXEMPT.has(node.name)) {
      gatherer.opaque(start);
      return;
    }
    for (const child of node.children ?? []) visitNode(child);
  }
}

/** Endings of keys that name a unit, with how it is written behind a number. */
const KEY_UNITS: Readonly<Record<string, string>> = {
  kn: 'kN', n: 'N', dan: 'daN', kgf: 'kgf', lbf: 'lbf', kg: 'kg', mm: 'mm', cm: 'cm', m: 'm', percent: '%', celsius: '\u00b0C',
  newton: 'newton', kilonewton: 'kilonewton', years: 'years', months: 'months', weeks: 'weeks', days: 'days',
};

/** The unit that a key ends in as a word of its own: `maxKn`, `max-kn`, `max_kN`, `kN`; undefined where it ends in none. */
function unitOfKey(key: string): string | undefined {
  const last = /(?:^|[-_]|(?<=[a-z\d]))([A-Z]?[a-z]*[A-Z]?)$/.exec(key)?.[1];
  return last ? KEY_UNITS[last.toLowerCase()] : undefined;
}

/** Every text of the front matter, each for itself. Its own shape is the page collection's matter. */
function gatherFrontMatter(source: string, gatherer: RunGatherer): void {
  const match = /^---[^\S\n]*\r?\n([\s\S]*?)\r?\n---[^\S\n]*(?:\r?\n|$)/.exec(source);
  if (!match) return;
  const shift = source.indexOf('\n') + 1;
  const document = parseDocument(match[1] as string, { prettyErrors: false });
  for (const error of document.errors)
    gatherer.prose.failures.push({ offset: shift + error.pos[0], message: `front matter: ${error.message}` });
  visit(document, {
    Scalar: (key, node) => {
      if (key === 'key' || !isScalar(node) || !node.range) return;
      gatherer.apart('front matter', source, shift + node.range[0], shift + node.range[1]);
    },
    // A number under a key that names its unit is a quantity as well: maxKn: 14.
    Pair: (_, pair) => {
      const unit = isScalar(pair.key) ? unitOfKey(String(pair.key.value)) : undefined;
      if (unit === undefined) return;
      visit(pair.value as never, {
        Scalar: (key, node) => {
          if (key === 'key' || !node.range || !/^[-+]?[\d.]/.test(String(node.value))) return;
          gatherer.apartAt('front matter', `${String(node.value)} ${unit}`, shift + node.range[0]);
        },
      });
    },
  });
}

function offsetOf(source: string, line: number, column: number): number {
  let offset = 0;
  for (let i = 1; i < line; i++) offset = source.indexOf('\n', offset) + 1;
  return offset + column - 1;
}
