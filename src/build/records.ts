/** Records of the site, read once for all pages. Every page asks here, so that one reader stands behind all of them. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { readAll } from '../records/read.ts';
import type {
  FactorClassRecord, FactorRecord, FigureRecord, GapRecord, LawRecord, MethodRecord, ReplacementRecord, SlingRecord, SourceRecord,
} from '../records/schema.ts';

/** All records by kind and id. */
export interface SiteRecords {
  figures: Map<string, FigureRecord>;
  sources: Map<string, SourceRecord>;
  factors: Map<string, FactorRecord>;
  classes: Map<string, FactorClassRecord>;
  methods: Map<string, MethodRecord>;
  slings: Map<string, SlingRecord>;
  gaps: Map<string, GapRecord>;
  replacements: Map<string, ReplacementRecord>;
  law: Map<string, LawRecord>;
  /** Newest version of the evidence; null before the first is cut. */
  version: string | null;
}

/** Newest of the frozen versions in `data/versions`, by day and then by count on that day. */
function newestVersion(root: string): string | null {
  const folder = join(root, 'data', 'versions');
  if (!existsSync(folder)) return null;
  const names = readdirSync(folder).filter((name) => /^\d{4}-\d{2}-\d{2}\.\d+\.json$/.test(name)).map((name) => name.slice(0, -'.json'.length));
  names.sort((a, b) => a.slice(0, 10).localeCompare(b.slice(0, 10)) || Number(a.slice(11)) - Number(b.slice(11)));
  return names.at(-1) ?? null;
}

let cached: SiteRecords | undefined;

/**
 * Reads the records below `root` (the project's folder). Faults of shape are the record check's to report; here a record
 * with a fault is simply absent, and the check has stopped the build before a page could miss it.
 */
export function siteRecords(root = process.cwd()): SiteRecords {
  if (cached) return cached;
  const all = readAll(root);
  const data = <T>(files: Map<string, { data: T }>): Map<string, T> => new Map([...files].map(([id, file]) => [id, file.data]));
  cached = {
    figures: new Map<string, FigureRecord>([...data(all.figures), ...data(all.moved)]),
    sources: data(all.sources),
    factors: data(all.factors),
    classes: data(all.classes),
    methods: data(all.methods),
    slings: data(all.slings),
    gaps: data(all.gaps),
    replacements: data(all.replacements),
    law: data(all.law),
    version: newestVersion(root),
  };
  return cached;
}
