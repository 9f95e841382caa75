/** Records of the site, read once for all pages. Every page asks here, so that one reader stands behind all of them. */
import { readAll } from '../records/read.ts';
import type {
  FactorClassRecord, FactorRecord, FigureRecord, GapRecord, LawRecord, MethodRecord, ReplacementRecord, RuleRecord, SlingRecord, SourceRecord,
} from '../records/schema.ts';
import { newestVersion } from './evidence.ts';

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
  rules: Map<string, RuleRecord>;
  /** Newest version of the evidence; `unreleased` before the first is cut. */
  version: string;
}

let cached: SiteRecords | undefined;

/**
 * Reads the records below `root` (the project's folder, where every command of the project runs). Faults of shape are the record check's to report; here a record
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
    rules: data(all.rules),
    version: newestVersion(root),
  };
  return cached;
}
