/** Readable text of syntax trees with JSX (ESTree): components, islands, and expressions in prose. */
import { RunGatherer } from './run.ts';

interface Node {
  type: string;
  start: number;
  end: number;
  [key: string]: unknown;
}

/** Elements whose text is no quantity of ours: a figure with its origin, a date, the name of a source. */
const EXEMPT_ELEMENTS: ReadonlySet<string> = new Set(['Fig', 'time', 'cite']);
/** Attributes that mark the reader's own input and the ticks of an axis. */
const EXEMPT_MARKS: ReadonlySet<string> = new Set(['data-input', 'data-axis']);
/** Elements whose content is no text. */
const NO_TEXT: ReadonlySet<string> = new Set(['style', 'script']);
/** Elements that do not break a line of text. */
const INLINE: ReadonlySet<string> = new Set([
  'a',
  'abbr',
  'b',
  'bdi',
  'cite',
  'code',
  'data',
  'dfn',
  'em',
  'i',
  'kbd',
  'mark',
  'q',
  's',
  'samp',
  'small',
  'span',
  'strong',
  'sub',
  'sup',
  'time',
  'tspan',
  'u',
  'var',
  'wbr',
  'Fig',
]);
/** Attributes that hold layout, addresses or names of code, never a sentence. */
const CODE_ATTRIBUTES: ReadonlySet<string> = new Set([
  'class',
  'className',
  'class:list',
  'style',
  'id',
  'href',
  'src',
  'srcset',
  'sizes',
  'media',
  'd',
  'viewBox',
  'points',
  'transform',
  'x',
  'y',
  'x1',
  'x2',
  'y1',
  'y2',
  'cx',
  'cy',
  'r',
  'rx',
  'ry',
  'dx',
  'dy',
  'width',
  'height',
  'stroke-width',
  'strokeWidth',
  'stroke-dasharray',
  'strokeDasharray',
  'font-size',
  'fontSize',
  'rel',
  'type',
  'name',
  'for',
  'htmlFor',
  'key',
  'role',
  'lang',
  'target',
  'pattern',
  'inputmode',
  'inputMode',
  'autocomplete',
  'method',
  'action',
  'client:media',
  'offset',
]);

/** The outline of a drawing, held in a string. */
const PATH_DATA = /^\s*[Mm][\sMmLlHhVvCcSsQqTtAaZz0-9.,-]+$/;

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

/** A string, or a template: with one of them a sum is a text. */
const isText = (node: Node): boolean =>
  node.type === 'TemplateLiteral' || (node.type === 'Literal' && typeof node['value'] === 'string');

/** What part of the file a tree came from: its text there, and how far its offsets lie from the file's. */
export interface Piece {
  /** Text that the tree's offsets count in. */
  text: string;
  /** Added to an offset of the tree to get one of the file. */
  shift: number;
  /** The whole file. */
  source: string;
}

/** Gathers all readable text of a tree. */
export function gatherJsx(root: unknown, piece: Piece, into: RunGatherer): void {
  const { shift, source } = piece;
  const at = (offset: number) => offset + shift;

  visit(root);

  function visit(value: unknown): void {
    if (Array.isArray(value)) {
      for (const item of value) visit(item);
      return;
    }
    if (!isNode(value)) return;
    switch (value.type) {
      case 'JSXElement':
      case 'JSXFragment':
        into.end();
        element(value);
        into.end();
        return;
      case 'JSXText': // text at the top of a component
        into.add(source, at(value.start), at(value.end));
        into.end();
        return;
      case 'AstroRoot':
        visit(value['frontmatter']);
        children(value['body']);
        into.end();
        return;
      case 'Literal':
        if (typeof value['value'] === 'string' && !PATH_DATA.test(value['value']))
          into.apart('code', source, at(value.start) + 1, at(value.end) - 1);
        return;
      case 'TemplateLiteral':
        template(value);
        return;
      case 'BinaryExpression':
        if (value['operator'] === '+' && operands(value).some(isText)) {
          const kept = into.hold();
          joined(value);
          into.resume(kept);
          return;
        }
        for (const side of ['left', 'right']) visit(value[side]);
        return;
      case 'ImportDeclaration':
      case 'ExportAllDeclaration':
      case 'TSTypeAliasDeclaration':
      case 'TSInterfaceDeclaration':
      case 'TSTypeAnnotation':
      case 'AstroComment':
      case 'AstroScript':
        return;
      default:
        for (const [name, part] of Object.entries(value)) {
          if (name === 'comments' || name === 'typeAnnotation' || name === 'typeArguments' || name === 'typeParameters')
            continue;
          if (name === 'key' && value.type === 'Property' && !value['computed']) continue;
          visit(part);
        }
    }
  }

  /** The parts of a sum, first to last. */
  function operands(node: Node): Node[] {
    if (node.type === 'ParenthesizedExpression') return operands(node['expression'] as Node);
    if (node.type !== 'BinaryExpression' || node['operator'] !== '+') return [node];
    return [...operands(node['left'] as Node), ...operands(node['right'] as Node)];
  }

  /** Texts joined by plus signs read as one text; computed parts are opaque, and what they hold is looked at apart. */
  function joined(node: Node): void {
    for (const part of operands(node)) {
      if (part.type === 'Literal' && typeof part['value'] === 'string') into.add(source, at(part.start) + 1, at(part.end) - 1);
      else if (part.type === 'Literal' && typeof part['value'] === 'number') into.plain(String(part['value']), at(part.start));
      else if (part.type === 'TemplateLiteral' && !(part['expressions'] as unknown[]).length) into.add(source, at(part.start) + 1, at(part.end) - 1);
      else {
        into.opaque(at(part.start));
        const kept = into.hold();
        visit(part);
        into.resume(kept);
      }
    }
  }

  /** A template's fixed parts, with an opaque sign for each computed one; strings inside those are looked at apart. */
  function template(node: Node): void {
    const quasis = node['quasis'] as Node[];
    const parts = node['expressions'] as Node[];
    const inner = new RunGatherer();
    const holes: number[] = [];
    // Offsets of quasis take in the backquote and braces in some parsers: the fixed text lies between the expressions.
    let from = node.start + 1;
    quasis.forEach((_, i) => {
      const hole = parts[i];
      const to = hole ? source.lastIndexOf('${', at(hole.start)) - shift : node.end - 1;
      inner.add(source, at(from), at(to));
      if (hole) {
        inner.opaque(at(to));
        holes.push(to);
        from = closing(hole.end);
      }
    });
    inner.end();
    for (const run of inner.prose.runs) into.prose.runs.push({ ...run, kind: 'code' });
    for (const hole of parts) visit(hole);
  }

  /** Offset behind the brace that closes an expression of a template. */
  function closing(end: number): number {
    return source.indexOf('}', at(end)) + 1 - shift;
  }

  function element(node: Node): void {
    const opening = node['openingElement'] as Node | undefined;
    const name = opening ? nameOf(opening['name'] as Node) : '';
    const attributes = ((opening?.['attributes'] ?? []) as Node[]).filter(isNode);
    const marked = attributes.some(
      (attribute) => attribute.type === 'JSXAttribute' && EXEMPT_MARKS.has(nameOf(attribute['name'] as Node)),
    );
    if (name === 'Fig') mention(attributes);
    if (EXEMPT_ELEMENTS.has(name) || marked) {
      into.opaque(at(node.start));
      if (marked) for (const attribute of attributes) attributeText(attribute);
      return;
    }
    for (const attribute of attributes) attributeText(attribute);
    if (NO_TEXT.has(name)) return;
    children(node['children']);
  }

  function children(list: unknown): void {
    for (const child of (list ?? []) as Node[]) {
      switch (child.type) {
        case 'JSXText':
          into.add(source, at(child.start), at(child.end));
          break;
        case 'JSXElement':
        case 'JSXFragment': {
          const opening = child['openingElement'] as Node | undefined;
          const inline = !opening || INLINE.has(nameOf(opening['name'] as Node));
          if (!inline) into.end();
          element(child);
          if (!inline) into.end();
          break;
        }
        case 'JSXExpressionContainer': {
          const expression = child['expression'] as Node;
          if (expression.type === 'Literal' && typeof expression['value'] === 'string')
            into.add(source, at(expression.start) + 1, at(expression.end) - 1);
          else if (expression.type === 'Literal' && typeof expression['value'] === 'number')
            into.plain(String(expression['value']), at(expression.start));
          else if (expression.type === 'TemplateLiteral' && !(expression['expressions'] as unknown[]).length)
            into.add(source, at(expression.start) + 1, at(expression.end) - 1);
          else if (expression.type === 'BinaryExpression' && operands(expression).some(isText)) joined(expression);
          else if (expression.type !== 'JSXEmptyExpression') {
            into.opaque(at(child.start));
            const kept = into.hold();
            visit(expression);
            into.resume(kept);
          }
          break;
        }
        case 'AstroComment':
        case 'AstroScript':
        case 'AstroDoctype':
          break;
        default:
          visit(child);
      }
    }
  }

  function attributeText(attribute: Node): void {
    if (attribute.type !== 'JSXAttribute') {
      visit(attribute);
      return;
    }
    const name = nameOf(attribute['name'] as Node);
    if (CODE_ATTRIBUTES.has(name)) return;
    const value = attribute['value'] as Node | null;
    if (!value) return;
    if (value.type === 'Literal') into.apart('attribute', source, at(value.start) + 1, at(value.end) - 1);
    else {
      const kept = into.hold();
      visit(value);
      into.resume(kept);
    }
  }

  function mention(attributes: Node[]): void {
    for (const attribute of attributes) {
      if (attribute.type !== 'JSXAttribute' || nameOf(attribute['name'] as Node) !== 'id') continue;
      let value = attribute['value'] as Node | null;
      if (value?.type === 'JSXExpressionContainer') value = value['expression'] as Node;
      if (value?.type === 'Literal' && typeof value['value'] === 'string')
        into.prose.mentions.push({ id: value['value'], offset: at(value.start) + 1 });
    }
  }
}

function nameOf(node: Node): string {
  if (node.type === 'JSXNamespacedName') return `${nameOf(node['namespace'] as Node)}:${nameOf(node['name'] as Node)}`;
  if (node.type === 'JSXMemberExpression') return nameOf(node['property'] as Node);
  return String(node['name']);
}
