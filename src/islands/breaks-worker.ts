/** The work of the analysis beside the page, so that it stays awake: statistics, and many records of force over time. */
import { analyse } from '../break-tests/analysis.ts';
import { compareSeries } from '../break-tests/compare-series.ts';
import { decodeText } from '../break-tests/decode-text.ts';
import { boundWithMore, type FurtherBound } from '../break-tests/further-pulls.ts';
import { endsOf } from '../break-tests/pulls.ts';
import { readTable, type TableOptions } from '../break-tests/read-table.ts';
import { samplesOf, traceColumns } from '../break-tests/table-trace.ts';
import type { Pair } from '../break-tests/tolerance-bound.ts';
import { traceOutline } from '../break-tests/trace-outline.ts';
import { readTrace } from '../break-tests/trace.ts';
import type { AskAnalysis, Asked, AskTraces, FileRead, Told } from './breaks-asked.ts';

/** How wide a small plot is, in stretches of time. */
const STRETCHES = 120;
/** Further pulls that a tester thinks of. */
const MORE = [3, 5, 10];
const BOUND: Pair = { coverage: 0.95, confidence: 0.95 };

const tell = (told: Told): void => postMessage(told);

function analysis({ pulls, others, pairs }: AskAnalysis): Omit<Told & { kind: 'analysis' }, 'id'> {
  const done = analyse(pulls, { pairs });
  const further: FurtherBound[] = done.summary.spread ? MORE.map((more) => boundWithMore(endsOf(pulls), more, BOUND)) : [];
  return { kind: 'analysis', analysis: done, compared: others.length > 0 ? compareSeries(pulls, others) : null, further };
}

async function readFile(file: File, options: TableOptions, { units, rangeKn }: AskTraces): Promise<FileRead & { options?: TableOptions }> {
  const { name } = file;
  const { text, encoding } = decodeText(new Uint8Array(await file.arrayBuffer()));
  const read = readTable(text, options);
  if ('stop' in read) return { is: 'stopped', name, stop: read.stop, message: read.stop.message };
  const { table } = read;
  const columns = traceColumns(table);
  if (!columns) {
    if (table.lines.length < 500) return { is: 'table', name, encoding, text };
    return { is: 'stopped', name, stop: null, message: 'it has several columns that may be the force. Give each column a heading with its unit, such as "time (s)" and "force (kN)".' };
  }
  const { timeS, forceKn, displacementMm } = samplesOf(table, columns, units);
  const reading = readTrace(timeS, forceKn, { ...(displacementMm && { displacementMm }), ...(rangeKn !== null && { rangeKn }) });
  const said = (at: number | null, what: string, unit: string): string => (at === null ? `no ${what}` : `${what}: ${table.columns[at]?.name}, ${table.columns[at]?.unit ?? `${unit} as chosen`}`);
  const spoken = [columns.time === null ? `no time: ${units.hz} samples a second as chosen` : said(columns.time, 'time', units.time), said(columns.force, 'force', units.force), ...(columns.travel === null ? [] : [said(columns.travel, 'travel', 'mm')])];
  return {
    is: 'trace', name, encoding, reading, outline: traceOutline(timeS, forceKn, STRETCHES), columns: spoken.join('; '),
    // The first record that can be read says how the others are written: one alone may not tell.
    options: { delimiter: table.delimiter, ...(table.decimal && { decimal: table.decimal }) },
  };
}

async function traces(asked: AskTraces & { id: number }): Promise<void> {
  const { files, id } = asked;
  let { options } = asked;
  for (const [at, file] of files.entries()) {
    let read: FileRead & { options?: TableOptions };
    try {
      read = await readFile(file, options, asked);
    } catch (fault) {
      read = { is: 'stopped', name: file.name, stop: null, message: fault instanceof RangeError ? 'no force in it rises above nothing, or its times do not rise.' : 'the browser could not read it.' };
    }
    options = { ...read.options, ...options };
    delete read.options;
    tell({ id, kind: 'file', at: at + 1, of: files.length, read });
  }
  tell({ id, kind: 'done' });
}

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  const failed = (fault: unknown): void => tell({ id: data.id, kind: 'failed', why: fault instanceof Error ? fault.message : 'no reason given' });
  try {
    if (data.kind === 'analysis') tell({ ...analysis(data), id: data.id });
    else traces(data).catch(failed);
  } catch (fault) {
    failed(fault);
  }
});
