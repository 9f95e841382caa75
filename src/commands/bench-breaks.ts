/** How fast the tester's bench is: 200 records of force over time at 500 Hz, read as the page's worker reads them, and the statistics of series. Part of `npm run bench`. */
import { analyse } from '../break-tests/analysis.ts';
import { decodeText } from '../break-tests/decode-text.ts';
import { readTable } from '../break-tests/read-table.ts';
import { samplesOf, traceColumns } from '../break-tests/table-trace.ts';
import { traceOutline } from '../break-tests/trace-outline.ts';
import { readTrace } from '../break-tests/trace.ts';

const [TRACES, HZ, SECONDS, STRETCHES] = [200, 500, 12, 120];

/** A pull: rest, a rise with ripple, a break. Made up for its length alone; no number of it is shown anywhere. */
function record(peakKn: number): Uint8Array {
  const rows = ['time (s);force (kN);travel (mm)'];
  for (let i = 0; i < SECONDS * HZ; i++) {
    const t = i / HZ;
    const force = t < 1 || t > 11 ? 0.002 * Math.sin(i) : (peakKn * (t - 1)) / 10 + 0.01 * Math.sin(7 * i);
    rows.push(`${t.toFixed(3)};${force.toFixed(4)};${(Math.max(0, t - 1) * 8).toFixed(3)}`);
  }
  return new TextEncoder().encode(rows.join('\n'));
}

/** Time for all records, and for the statistics of series of some lengths. */
export function benchBreaks(): { what: string; milliseconds: number }[] {
  const files = Array.from({ length: TRACES }, (_, i) => record(8 + i / 40));
  let from = performance.now();
  let samples = 0;
  for (const bytes of files) {
    const read = readTable(decodeText(bytes).text);
    if ('stop' in read) throw new RangeError(read.stop.message);
    const columns = traceColumns(read.table);
    if (!columns) throw new RangeError('files: no record of a pull');
    const { timeS, forceKn, displacementMm } = samplesOf(read.table, columns, { force: 'kN', time: 's', hz: HZ });
    samples += readTrace(timeS, forceKn, displacementMm ? { displacementMm } : {}).samples;
    traceOutline(timeS, forceKn, STRETCHES);
  }
  const lines = [{ what: `${TRACES} records at ${HZ} Hz, ${samples} samples: read, peaks, flags, outlines`, milliseconds: performance.now() - from }];
  for (const n of [5, 30, 200]) {
    const pulls = Array.from({ length: n }, (_, i) => ({ force: 9 + ((i * 7919) % 101) / 40, atLeast: i % 9 === 8, mode: i % 3 ? 'sling' : 'knot', link: i % 3 ? 'sling' : 'knot' }));
    analyse(pulls);
    from = performance.now();
    analyse(pulls);
    lines.push({ what: `all statistics of ${n} pulls`, milliseconds: performance.now() - from });
  }
  return lines;
}
