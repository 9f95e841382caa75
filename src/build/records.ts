/** Records of the site, read once for all pages. Every page asks here, so that one reader stands behind all of them. */
import { isInvented, pullsFileOf, readAll } from '../records/read.ts';
import type {
  CorrectionRecord, FactorClassRecord, FactorRecord, FigureRecord, GapRecord, LawRecord, MethodRecord, RackMaterialRecord, ReplacementRecord, RuleRecord, SeriesRecord, SlingRecord,
  SourceRecord, Withdrawn,
} from '../records/schema.ts';
import { loadEvidence } from './evidence.ts';

/** A series of breaks with the text of its pulls. */
export interface SiteSeries { record: SeriesRecord; csv: string; invented: boolean }

/** All records by kind and id. */
export interface SiteRecords {
  figures: Map<string, FigureRecord>;
  /** Figures that we no longer stand behind. */
  withdrawn: Map<string, Withdrawn>;
  sources: Map<string, SourceRecord>;
  factors: Map<string, FactorRecord>;
  classes: Map<string, FactorClassRecord>;
  methods: Map<string, MethodRecord>;
  slings: Map<string, SlingRecord>;
  gaps: Map<string, GapRecord>;
  replacements: Map<string, ReplacementRecord>;
  law: Map<string, LawRecord>;
  rules: Map<string, RuleRecord>;
  materials: Map<string, RackMaterialRecord>;
  corrections: Map<string, CorrectionRecord>;
  series: Map<string, SiteSeries>;
  /** Newest version of the evidence, with a plus sign where the records have changed since; `unreleased` before the first is cut. */
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
    figures: withoutMisprints(new Map<string, FigureRecord>([...data(all.figures), ...data(all.moved)]), data(all.corrections)),
    withdrawn: data(all.withdrawn),
    sources: data(all.sources),
    factors: data(all.factors),
    classes: data(all.classes),
    methods: data(all.methods),
    slings: data(all.slings),
    gaps: data(all.gaps),
    replacements: data(all.replacements),
    law: data(all.law),
    rules: data(all.rules),
    materials: data(all.materials),
    corrections: data(all.corrections),
    series: new Map([...all.series].map(([id, file]) => [id, { record: file.data, csv: all.files[pullsFileOf(file)] ?? '', invented: isInvented(file) }])),
    version: loadEvidence(root).version,
  };
  return cached;
}

/**
 * Figures as pages print them. Where a correction stands, the wrong number of the source is not printed as the figure's
 * own: the value that is used takes its place, and the correction itself says what the source prints.
 */
export function withoutMisprints(figures: ReadonlyMap<string, FigureRecord>, corrections: ReadonlyMap<string, CorrectionRecord>): Map<string, FigureRecord> {
  const corrected = new Map(figures);
  for (const { figure } of corrections.values()) {
    const [id, cell] = figure.split('#') as [string, string?];
    const record = corrected.get(id);
    if (!record || !('what' in record)) continue;
    if (cell === undefined) corrected.set(id, lessPrinted(record));
    else if ('cells' in record && record.cells[cell]) corrected.set(id, { ...record, cells: { ...record.cells, [cell]: lessPrinted(record.cells[cell]) } });
  }
  return corrected;
}

function lessPrinted<T extends { asPrinted?: string | undefined }>(one: T): T {
  const { asPrinted: _printed, ...rest } = one;
  return rest as T;
}
