/** Everything but figures that search finds: pages, guides, methods, materials, lessons, rules, routes, laws, the model, terms, sources, gaps, breaks. */
import { posix } from 'node:path';
import { type FileMap, readFiles } from '../../records/files.ts';
import { proseOfComponent } from '../../records/prose/component.ts';
import { figureMark, nameMark } from '../../search/marked.ts';
import type { Kind, Part, SearchPage } from '../../search/pages.ts';
import { isEmpty, wordsOf } from '../../search/words.ts';
import { figure } from '../figures/figures.ts';
import { siteLessons } from '../lessons.ts';
import { siteRecords } from '../records.ts';
import { sectionsOf } from './sections.ts';
import { allLinks, headLinks } from '../site.ts';
import { languageWords, sourceLine, sourceTypeWords } from '../source-words.ts';
import { termBook } from '../terms.ts';
import { figureWords, STANDING_WORDS } from '../words.ts';

const upper = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
/** The number of a figure behind a sentence, as the page prints it. */
const mark = (id: string): string => {
  const shown = figure(id);
  return figureMark(shown.id, figureWords(shown), STANDING_WORDS[shown.standing].mark);
};

/** Pages that have no address of their own in their name, or nothing to find. */
const NOT_FOUND = /\[|^src\/pages\/(?:404|search\/index|embed\/fall\/index)\.astro$/;
/** The one page whose title stands in a component. */
const COMPARE = { path: '/compare/', title: 'Compare ways to attach a sling', says: 'Describe your device, its eye and one sling: what breaks first with each way of attaching it, at what force, and what one clipping error does.' };

/** An attribute of a page's frame that is written out, there or as a constant of the page. */
function attribute(source: string, name: string): string | null {
  const [, words, constant] = new RegExp(`<Page\\b[^>]*\\s${name}=(?:"([^"]*)"|\\{(\\w+)\\})`).exec(source) ?? [];
  return words ?? (constant ? (new RegExp(`\\bconst ${constant} = (['"])(.*?)\\1;`).exec(source)?.[2] ?? null) : null);
}

/** Scripts and components that a file is made of. Components outside a folder of their own are those of all pages, and say nothing of one. */
const importsOf = (file: string, source: string): string[] =>
  [...source.matchAll(/\b(?:from|import)\s*\(?['"](\.[^'"]+\.(?:tsx|astro|ts))['"]/g)].map(([, path]) => posix.join(posix.dirname(file), path as string)).filter((path) => /^src\/(?:components\/[^/]+|islands)\/[^/]+$/.test(path));

/** Words of the forms and results that a page is made of, each once: found, never shown. */
function wordsOfParts(page: string, files: FileMap): string {
  const words = new Set<string>();
  const seen = new Set([page]);
  const queue = importsOf(page, files[page] ?? '');
  for (let file = queue.pop(); file !== undefined; file = queue.pop()) {
    const source = files[file];
    if (seen.has(file) || source === undefined) continue;
    seen.add(file);
    queue.push(...importsOf(file, source));
    for (const { text } of proseOfComponent(file, source).runs) for (const word of wordsOf(text)) if (/^\p{L}{3,}$/u.test(word) && !isEmpty(word)) words.add(word);
  }
  return [...words].sort().join(' ');
}

/** Pages that are written by hand, with the names by which menus call them. */
function writtenPages(files: FileMap): SearchPage[] {
  return Object.entries(files).flatMap(([file, source]) => {
    if (!/^src\/pages\/.*\.astro$/.test(file) || NOT_FOUND.test(file)) return [];
    const path = file.replace(/^src\/pages|\.astro$/g, '').replace(/(?:\/index)?$/, '/');
    const title = attribute(source, 'title') ?? (path === COMPARE.path ? COMPARE.title : null);
    const says = attribute(source, 'description') ?? (path === COMPARE.path ? COMPARE.says : null);
    if (title === null || says === null) throw new RangeError(`${file}: the page's title or description is not written out, there or as a constant of the page, so search cannot name it`);
    const also = [...headLinks, ...allLinks].filter((door) => door.path === path && door.name !== title).map(({ name }) => name);
    const more = wordsOfParts(file, files);
    return [{ kind: 'page' as const, path, title, says, ...(also.length > 0 ? { also } : {}), ...(more ? { more } : {}), parts: sectionsOf(file, source) }];
  });
}

let made: SearchPage[] | undefined;

/** Everything but figures, in the order of kinds. @param root the project's folder */
export function searchPages(root = process.cwd()): readonly SearchPage[] {
  made ??= readPages(root);
  return made;
}

function readPages(root: string): SearchPage[] {
  const files = readFiles(root);
  const { methods, materials, rules, replacements, law, factors, classes, sources, gaps, series } = siteRecords();
  const prose = (folder: string, id: string): Part[] => {
    const file = `content/${folder}/${id}.mdx`;
    return sectionsOf(file, files[file] ?? '');
  };
  const guides = Object.keys(files).filter((file) => file.startsWith('content/guides/')).map((file): SearchPage => {
    const id = file.replace(/^.*\/|\.mdx$/g, '');
    const field = (name: string): string => new RegExp(`^${name}: *"?(.*?)"?$`, 'm').exec(files[file] ?? '')?.[1] ?? '';
    return { kind: 'guide', path: `/guides/${id}/`, title: field('title'), says: field('says'), parts: prose('guides', id) };
  });
  const one = (kind: Kind, path: string, title: string, rest: Partial<SearchPage> = {}): SearchPage => ({ kind, path, title: upper(title), ...rest });
  return [
    ...writtenPages(files),
    ...guides,
    ...[...methods].map(([id, { name, summary }]) => one('method', `/methods/${id}/`, name, { says: summary, parts: prose('methods', id) })),
    ...[...materials].map(([id, { name, summary }]) => one('material', `/materials/${id}/`, name, { ...(name.includes('(') ? { also: [name.replace(/ *\(.*/, '')] } : {}), says: summary, parts: prose('materials', id) })),
    ...siteLessons(root).map(({ id, title, says, aims, remember }) => one('lesson', `/teach/${id}/`, title, { says, more: [...aims, ...remember].join(' '), parts: prose('lessons', id) })),
    ...[...rules].map(([id, { what, says, figures, verdict }]) => one('rule', `/retire/#rule-${id}`, what, { says: [says, ...figures.slice(0, 1).map(mark)].join(' '), more: verdict })),
    ...[...replacements].map(([id, { name, who, keeps, refuses, ask }]) => one('route', `/replace/#${id}`, name, { says: who, parts: [{ at: '', head: '', text: [keeps, refuses ?? '', ...ask].join('\n') }] })),
    ...[...law.values()].map(({ region, covers, sentences }) => one('law', `/replace/#${region}`, `What the law says: ${REGIONS[region]}`, { says: covers, more: REGION_WORDS[region], parts: [{ at: '', head: '', text: sentences.map(({ says }) => says).join('\n') }] })),
    ...[...factors].map(([id, { what }]) => one('model', `/model/factors/#factor-${id}`, what, { says: 'A factor of the strength model, with the figures that it uses and leaves out.' })),
    ...[...classes].map(([id, { what }]) => one('model', `/model/factors/#class-${id}`, what, { says: 'A class of the strength model, with its scatter and its spread between laboratories.' })),
    ...termBook(root).terms.map(({ id, name, also, meaning, more }) => one('term', more ? `/terms/${id}/` : `/terms/#${id}`, name, { says: meaning, ...(also.length > 0 ? { also } : {}), ...(more ? { parts: prose('terms', id) } : {}) })),
    ...[...sources].map(([id, source]) => one('source', `/sources/${id}/`, source.title, {
      ...(source.number ? { also: [source.number] } : {}), by: sourceLine(source), says: nameMark([upper(sourceTypeWords(source.type)), languageWords(source.language), source.free ? 'free to read' : 'sold, or in libraries'].join(', ')),
      more: [source.number, source.edition, source.publisher, source.container, source.note, source.informal, id.replaceAll('-', ' ')].filter(Boolean).join(' . '),
    })),
    ...[...gaps].map(([id, { question, test, nearest }]) => one('gap', `/gaps/${id}/`, question, { says: nearest.length > 0 ? `The nearest figure: ${mark(nearest[0] as string)}` : 'No figure comes near.', more: [test.rig, test.vary ?? '', test.record].join(' . ') })),
    ...[...series].map(([id, { record, invented }]) => one('breaks', `/breaks/${id}/`, `${record.what}${invented ? ' (invented)' : ''}`, { says: 'Single breaks with lower bounds, distributions and what broke.', more: record.called })),
  ];
}

/** How readers call a region as well. */
const REGION_WORDS = { eu: 'EU Europe CE', uk: 'UK Great Britain England Scotland Wales', us: 'US USA America OSHA', elsewhere: '' } as const;
const REGIONS = { eu: 'European Union and European Economic Area', uk: 'United Kingdom', us: 'United States', elsewhere: 'elsewhere' } as const;
