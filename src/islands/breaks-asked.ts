/** What the page of the analysis and its worker say to each other. */
import type { Analysis } from '../break-tests/analysis.ts';
import type { SeriesCompared } from '../break-tests/compare-series.ts';
import type { FurtherBound } from '../break-tests/further-pulls.ts';
import type { Encoding } from '../break-tests/decode-text.ts';
import type { Pull } from '../break-tests/pulls.ts';
import type { TableOptions, TableStop } from '../break-tests/read-table.ts';
import type { TraceUnits } from '../break-tests/table-trace.ts';
import type { Pair } from '../break-tests/tolerance-bound.ts';
import type { OutlineStretch } from '../break-tests/trace-outline.ts';
import type { TraceReading } from '../break-tests/trace.ts';

/** Statistics of a series, and of a second one beside it. */
export interface AskAnalysis { kind: 'analysis'; pulls: readonly Pull[]; others: readonly Pull[]; pairs: readonly Pair[] }
/** Records of force over time, one a file. */
export interface AskTraces { kind: 'traces'; files: readonly File[]; options: TableOptions; units: TraceUnits; rangeKn: number | null }
export type Asked = (AskAnalysis | AskTraces) & { id: number };

/** How one file was read: a table of a few pulls, one record, or a reason. */
export type FileRead =
  | { is: 'trace'; name: string; encoding: Encoding; reading: TraceReading; outline: readonly OutlineStretch[]; columns: string }
  | { is: 'table'; name: string; encoding: Encoding; text: string }
  | { is: 'stopped'; name: string; stop: TableStop | null; message: string };

export type Told =
  | { id: number; kind: 'analysis'; analysis: Analysis; compared: SeriesCompared | null; further: readonly FurtherBound[] }
  | { id: number; kind: 'file'; at: number; of: number; read: FileRead }
  | { id: number; kind: 'done' }
  | { id: number; kind: 'failed'; why: string };
