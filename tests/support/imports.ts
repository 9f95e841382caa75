/** Reads what a source file imports and which free names it uses, with the TypeScript parser. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { posix } from 'node:path';
import ts from 'typescript';
import { ROOT } from './step.ts';

/** One import or re-export. `typeOnly` ones vanish when the code runs. */
export interface Import {
  /** As written: `../numerics/normal.ts`, `zod`. */
  from: string;
  /** Path in the project when it is one of its files, else null. */
  path: string | null;
  typeOnly: boolean;
  line: number;
}

/** Code of an `.astro` file: what stands between its two lines of dashes, and its scripts; padded so that lines keep their number. */
export function codeOf(path: string, text: string): string {
  if (!path.endsWith('.astro')) return text;
  const blank = (piece: string) => piece.replace(/[^\n]/g, ' ');
  const fence = /^---\n([\s\S]*?)\n---/.exec(text);
  let code = fence ? `    ${fence[1]?.length ? `\n${fence[1]}` : ''}\n   ` : '';
  const rest = text.slice(fence ? fence[0].length : 0);
  let at = 0;
  for (const script of rest.matchAll(/<script(?![^>]*type="application\/)[^>]*>([\s\S]*?)<\/script>/g)) {
    const start = (script.index ?? 0) + script[0].indexOf('>') + 1;
    code += blank(rest.slice(at, start)) + (script[1] ?? '');
    at = start + (script[1]?.length ?? 0);
  }
  return code;
}

/** Parses a file of the project. */
export function parseSource(path: string, text = readFileSync(join(ROOT, path), 'utf8')): ts.SourceFile {
  const kind = path.endsWith('.tsx') || path.endsWith('.astro') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  return ts.createSourceFile(path, codeOf(path, text), ts.ScriptTarget.ESNext, true, kind);
}

/** All imports of a file: static, re-exported, dynamic and in types. */
export function importsOf(source: ts.SourceFile): Import[] {
  const found: Import[] = [];
  const add = (specifier: ts.Node, typeOnly: boolean) => {
    if (!ts.isStringLiteralLike(specifier)) return;
    const from = specifier.text;
    const path = from.startsWith('.') ? posix.join(dirname(source.fileName), from.split('?')[0] ?? from) : null;
    found.push({ from, path, typeOnly, line: source.getLineAndCharacterOfPosition(specifier.getStart()).line + 1 });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) {
      const clause = node.importClause;
      const bindings = clause?.namedBindings;
      const namesAllTypes = clause && !clause.name && bindings && ts.isNamedImports(bindings) && bindings.elements.length > 0 && bindings.elements.every((element) => element.isTypeOnly);
      add(node.moduleSpecifier, clause?.phaseModifier === ts.SyntaxKind.TypeKeyword || Boolean(namesAllTypes));
    } else if (ts.isExportDeclaration(node) && node.moduleSpecifier) {
      add(node.moduleSpecifier, node.isTypeOnly);
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword && node.arguments[0]) {
      add(node.arguments[0], false);
    } else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
      add(node.argument.literal, true);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** A name used as a value that the file itself does not declare. */
export interface FreeName {
  /** `fetch`, or with the member used: `Math.random`, `Date.now`; `new Date()` for a date without an argument. */
  name: string;
  line: number;
}

/** Free names of a file: globals it reaches for. Names of members, properties and types are not among them. */
export function freeNamesOf(source: ts.SourceFile): FreeName[] {
  const declared = new Set<string>();
  const collect = (node: ts.Node): void => {
    if ((ts.isVariableDeclaration(node) || ts.isParameter(node) || ts.isBindingElement(node) || ts.isFunctionDeclaration(node) || ts.isClassDeclaration(node) || ts.isImportSpecifier(node) || ts.isImportClause(node) || ts.isNamespaceImport(node) || ts.isFunctionExpression(node)) && node.name && ts.isIdentifier(node.name)) {
      declared.add(node.name.text);
    }
    ts.forEachChild(node, collect);
  };
  collect(source);
  const found: FreeName[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) && !ts.isExpressionWithTypeArguments(node)) return;
    if (ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node)) return;
    if (ts.isIdentifier(node) && !declared.has(node.text) && isValueUse(node)) {
      const line = source.getLineAndCharacterOfPosition(node.getStart()).line + 1;
      const parent = node.parent;
      if (ts.isPropertyAccessExpression(parent) && parent.expression === node) found.push({ name: `${node.text}.${parent.name.text}`, line });
      else if (ts.isNewExpression(parent) && parent.expression === node && node.text === 'Date' && (parent.arguments?.length ?? 0) === 0) found.push({ name: 'new Date()', line });
      else found.push({ name: node.text, line });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function isValueUse(node: ts.Identifier): boolean {
  const parent = node.parent;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isPropertyAssignment(parent) || ts.isPropertyDeclaration(parent) || ts.isMethodDeclaration(parent) || ts.isPropertySignature(parent)) return parent.name !== node;
  if (ts.isBindingElement(parent)) return parent.propertyName !== node;
  return !(ts.isJsxAttribute(parent) || ts.isImportSpecifier(parent) || ts.isExportSpecifier(parent) || ts.isLabeledStatement(parent) || ts.isJsxOpeningElement(parent) || ts.isJsxClosingElement(parent) || ts.isJsxSelfClosingElement(parent));
}
