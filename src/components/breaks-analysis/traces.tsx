/** Records of force over time, each as a small plot with what it says, to accept, correct or leave out. */
import { forceNumberKn } from './forces.ts';
import type { FileRead } from '../../islands/breaks-asked.ts';
import { FLAG_WORDS } from './words.ts';

/** What the reader says of one record. */
export interface TraceChoice { use: boolean; atLeast: boolean; mode: string; link: string }

const [WIDTH, HEIGHT] = [240, 70];

/** The plot: the lowest and highest force of each stretch, so that no spike is lost. */
function Plot({ read }: { read: FileRead & { is: 'trace' } }) {
  const { outline, reading } = read;
  const from = outline[0]?.fromS ?? 0;
  const to = outline.at(-1)?.toS ?? 1;
  const top = Math.max(...outline.map(({ highKn }) => highKn ?? 0), reading.peakKn);
  const low = Math.min(0, ...outline.map(({ lowKn }) => lowKn ?? 0));
  const y = (kn: number): string => (HEIGHT - 2 - ((kn - low) / (top - low)) * (HEIGHT - 6)).toFixed(1);
  const x = (s: number): string => (((s - from) / (to - from)) * WIDTH).toFixed(1);
  const runs = outline.flatMap(({ fromS, toS, lowKn, highKn }) => (lowKn === null || highKn === null ? [] : [`M${x((fromS + toS) / 2)} ${y(lowKn)}V${y(highKn + 0.004 * (top - low))}`]));
  return (
    <svg class="trace" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path class="base" d={`M0 ${y(0)}H${WIDTH}`} />
      <path class="run" d={runs.join('')} />
      <path class="peak" d={`M${x(reading.peakAtS)} 0V${HEIGHT}`} />
    </svg>
  );
}

const seconds = (s: number): string => `${Number(s.toPrecision(3))} s`;

function Card({ read, at, choice }: { read: FileRead; at: number; choice: TraceChoice }) {
  const name = <b data-input>{read.name}</b>;
  if (read.is === 'stopped') return <li class="card"><p>{name}: not read. <span data-input>{read.message}</span></p></li>;
  if (read.is === 'table') return <li class="card"><p>{name}: a table, not a record of one pull. Drop it alone, and it is put into the box.</p></li>;
  const { reading } = read;
  return (
    <li class="card">
      <p>{name}: peak <b data-input>{forceNumberKn(reading.peakKn)} kN</b></p>
      <Plot read={read} />
      <p class="small" data-input>
        {seconds(reading.timeToPeakS)} to the peak{reading.rateKnPerS !== null && <>, {Number(reading.rateKnPerS.toPrecision(3))} kN/s</>}
        {reading.energyJ !== null && <>, {Number(reading.energyJ.toPrecision(3))} J</>}, {reading.samples} samples at {Number(reading.sampleHz.toPrecision(3))} Hz
        {reading.offset && <>; offset {forceNumberKn(reading.offset.kn)} kN, taken off</>}. {read.columns}. {read.encoding}.
      </p>
      {reading.flags.length > 0 && <ul class="small flags">{reading.flags.map((flag) => <li key={flag}>{FLAG_WORDS[flag]}</li>)}</ul>}
      <p class="refusals">
        <label class="chip"><input type="checkbox" name={`use-${at}`} checked={choice.use} />use it</label>
        <label class="chip"><input type="checkbox" name={`limit-${at}`} checked={choice.atLeast} />the part did not break</label>
      </p>
      <p class="row">
        <label>How it broke <input type="text" name={`mode-${at}`} value={choice.mode} /></label>
        <label>Which part <input type="text" name={`link-${at}`} value={choice.link} /></label>
      </p>
    </li>
  );
}

/** All records, with what becomes of them. */
export function Traces({ files, choices, progress }: { files: readonly FileRead[]; choices: readonly TraceChoice[]; progress: { done: number; of: number } | null }) {
  const used = choices.filter(({ use }, i) => use && files[i]?.is === 'trace').length;
  return (
    <section class="traces" aria-labelledby="traces-title">
      <h2 id="traces-title" tabIndex={-1}>Records</h2>
      {progress && (
        <p role="status">
          <progress max={progress.of} value={progress.done} aria-label="Records read" /> <span data-input>{progress.done} of {progress.of}</span> read.
          {' '}<button type="button" name="cancel">Cancel</button>
        </p>
      )}
      <ol class="cards">{files.map((read, at) => <Card key={at} read={read} at={at} choice={choices[at] as TraceChoice} />)}</ol>
      {!progress && <p><button type="button" name="take" disabled={used === 0}>Put <span data-input>{used}</span> {used === 1 ? 'pull' : 'pulls'} into the box</button> <button type="button" name="drop">Leave the records out</button></p>}
    </section>
  );
}
