/** Each page carries a content policy by hash that every inline script and style of that page really matches. */
import { createHash } from 'node:crypto';
import { brief, type Fault, type Gate, type Page, selectorOf } from './site.ts';

/** Directives that every page must have, word for word. */
const REQUIRED: Readonly<Record<string, string>> = {
  'default-src': "'none'",
  'base-uri': "'none'",
  'require-trusted-types-for': "'script'",
};
const LOOSE = ["'unsafe-inline'", "'unsafe-eval'", "'unsafe-hashes'", '*', 'http:', 'https:', 'data:', 'blob:'];

export const policy: Gate = {
  name: 'policy',
  holds: 'a content policy by hash with trusted types on every page; no style attribute and no inline handler',
  check: (site) => site.pages.flatMap((page) => checkPage(page).map((message) => ({ page: page.path, message }) satisfies Fault)),
};

/** Directives of a policy text; of two with one name a browser takes the first. */
export function directivesOf(text: string): ReadonlyMap<string, readonly string[]> {
  const directives = new Map<string, readonly string[]>();
  for (const piece of text.split(';')) {
    const [name, ...values] = piece.trim().split(/\s+/);
    if (name && !directives.has(name.toLowerCase())) directives.set(name.toLowerCase(), values);
  }
  return directives;
}

const hashOf = (text: string, algorithm: 'sha256' | 'sha384' | 'sha512') => `'${algorithm}-${createHash(algorithm).update(text, 'utf8').digest('base64')}'`;

function isHashed(text: string, sources: readonly string[]): boolean {
  return (['sha256', 'sha384', 'sha512'] as const).some((algorithm) => sources.includes(hashOf(text, algorithm)));
}

function checkPage(page: Page): string[] {
  const metas = page.document.querySelectorAll('meta').filter((meta) => meta.getAttribute('http-equiv')?.toLowerCase() === 'content-security-policy');
  const [meta] = metas;
  if (!meta || metas.length !== 1) return [`has ${metas.length} content policies; a page has one.`];
  const faults: string[] = [];
  const directives = directivesOf(meta.getAttribute('content') ?? '');
  for (const [name, value] of Object.entries(REQUIRED)) {
    if (directives.get(name)?.join(' ') !== value) faults.push(`the policy lacks ${name} ${value}.`);
  }
  for (const name of ['script-src', 'style-src'] as const) {
    const sources = directives.get(name) ?? directives.get('default-src') ?? [];
    for (const loose of LOOSE) if (sources.includes(loose)) faults.push(`the policy's ${name} allows ${loose}.`);
    const tag = name === 'script-src' ? 'script' : 'style';
    for (const element of page.document.querySelectorAll(tag)) {
      const type = element.getAttribute('type') ?? '';
      const runs = tag === 'style' || type === '' || type === 'module' || /javascript/.test(type);
      if (element.getAttribute('src') || !runs) continue;
      const text = element.childNodes.map((node) => node.rawText).join('');
      if (!isHashed(text, sources)) faults.push(`the policy has no hash of an inline ${tag}: "${brief(text, 60)}". The browser would block it.`);
    }
  }
  // What is fetched before the policy is read is not bound by it. Inline text is: its hash was looked up above.
  const before = page.html.slice(0, page.html.toLowerCase().indexOf('content-security-policy'));
  if (/<script\b[^>]*\ssrc=|<link\b[^>]*stylesheet/i.test(before)) faults.push('a script or style is fetched before the policy in the head, outside its reach.');
  for (const element of page.document.querySelectorAll('[style]')) {
    faults.push(`${selectorOf(element)} has a style attribute, which the policy blocks. Use a class.`);
  }
  for (const element of page.document.querySelectorAll('*')) {
    const handler = Object.keys(element.attributes).find((name) => /^on[a-z]+$/i.test(name));
    if (handler) faults.push(`${selectorOf(element)} has ${handler}=, which the policy blocks. Listen from the script.`);
  }
  return faults;
}
