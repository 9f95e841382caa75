/**
 * A demand: the load that falls bring, as a distribution in kN, and the chance that it exceeds a strength. The load on the
 * top piece is not the load on the sling alone; what carries it there is the reader's rig.
 */
import { normalCdf, normalPdf, normalQuantile } from '../numerics/normal.ts';
import { gaussLegendre } from '../numerics/quadrature.ts';
import type { Distribution } from '../strength/distribution.ts';
import { assertPositive } from './checks.ts';
import type { ToldLoads } from './told-fall.ts';

/** What is known of a strength: the chance that it lies at or below a force. */
export interface StrengthLaw {
  /** P(strength <= kn), rising from 0 to 1; the attachment's is one minus the survival of its chain (src/strength/chain.ts). */
  below: (kn: number) => number;
  /** Forces at which it bends sharply, such as the floor of a standard; may be empty. */
  kinksKn?: readonly number[];
}

/** Standard normal at 95 %: between minus this and this lie nine in ten. */
const NINE_IN_TEN = normalQuantile(0.95);
/** How far out the load is looked at, in standard deviations; beyond lie less than one in 10^15. */
const REACH = 8;
const PANELS = 48;
const NODES = 12;

/**
 * A demand of which a range was told: nine loads in ten between the ends, lognormal (`demand` in FALL_ASSUMPTIONS).
 * @throws RangeError unless 0 < low < high
 */
export function demandOfRange(low: number, high: number): Extract<Distribution, { dist: 'lognormal' }> {
  assertPositive(low, 'low');
  if (!(high > low && high < Infinity)) throw new RangeError(`high must be above low, ${low}, and finite (got ${high}).`);
  return { dist: 'lognormal', muLog: 0.5 * (Math.log(low) + Math.log(high)), sigmaLog: (Math.log(high) - Math.log(low)) / (2 * NINE_IN_TEN) };
}

/**
 * A demand from measured peaks: lognormal with the mean and scatter of their logarithms. Few peaks know their scatter badly.
 * @throws RangeError for fewer than three peaks, one that is not positive, or peaks that are all equal
 */
export function demandOfPeaks(peaksKn: readonly number[]): Extract<Distribution, { dist: 'lognormal' }> {
  if (peaksKn.length < 3) throw new RangeError(`peaksKn must hold three or more (got ${peaksKn.length}).`);
  for (const [i, peak] of peaksKn.entries()) assertPositive(peak, `peaksKn[${i}]`);
  const logs = peaksKn.map(Math.log);
  const muLog = logs.reduce((sum, x) => sum + x, 0) / logs.length;
  const sigmaLog = Math.sqrt(logs.reduce((sum, x) => sum + (x - muLog) ** 2, 0) / (logs.length - 1));
  if (!(sigmaLog > 0)) throw new RangeError('peaksKn must not all be equal.');
  return { dist: 'lognormal', muLog, sigmaLog };
}

/** The demand of a told fall on what stops it: the top piece, or the belay where there is none. */
export function demandOfFall({ topPieceKn, climberKn }: Pick<ToldLoads, 'topPieceKn' | 'climberKn'>): Extract<Distribution, { dist: 'lognormal' }> {
  const { low, high } = topPieceKn ?? climberKn;
  return demandOfRange(low, high);
}

/** The load that a standard normal z stands for. */
function loadAt(demand: Distribution, z: number): number {
  if (demand.dist === 'normal') return demand.mu + demand.sigma * z;
  if (demand.dist === 'lognormal') return Math.exp(demand.muLog + demand.sigmaLog * z);
  // Of the two ways to the upper tail the one that keeps its digits.
  const minusLog = z > 0 ? -Math.log(normalCdf(-z)) : -Math.log1p(-normalCdf(z));
  return demand.scale * minusLog ** (1 / demand.shape);
}

/** The z at which the load is `kn`; beyond the reach where it never or always is. */
function placeOf(demand: Distribution, kn: number): number {
  if (demand.dist === 'normal') return (kn - demand.mu) / demand.sigma;
  if (kn <= 0) return -Infinity;
  if (demand.dist === 'lognormal') return (Math.log(kn) - demand.muLog) / demand.sigmaLog;
  const above = Math.exp(-((kn / demand.scale) ** demand.shape));
  return above <= 0 ? Infinity : above >= 1 ? -Infinity : -normalQuantile(above);
}

/**
 * Twenty equal parts of a demand: kN at 2.5 %, 7.5 %, ... 97.5 %, for dots beside those of a strength.
 */
export function demandDots(demand: Distribution): number[] {
  return Array.from({ length: 20 }, (_, i) => loadAt(demand, normalQuantile((i + 0.5) / 20)));
}

/**
 * Chance that a load exceeds a strength, the two independent: the mean over the load of P(strength <= load).
 * @returns a share from 0 to 1
 */
export function chanceExceeds(demand: Distribution, { below, kinksKn = [] }: StrengthLaw): number {
  const marks = [...new Set([-REACH, ...kinksKn.map((kn) => placeOf(demand, kn)).filter((z) => z > -REACH && z < REACH), REACH])].sort((a, b) => a - b);
  const rule = gaussLegendre(NODES);
  let sum = 0;
  for (let m = 0; m + 1 < marks.length; m++) {
    const from = marks[m] as number;
    const width = (marks[m + 1] as number) - from;
    const panels = Math.max(1, Math.ceil((PANELS * width) / (2 * REACH)));
    const half = width / panels / 2;
    for (let p = 0; p < panels; p++) {
      for (let i = 0; i < NODES; i++) {
        const z = from + half * (2 * p + 1 + (rule.nodes[i] as number));
        sum += half * (rule.weights[i] as number) * normalPdf(z) * below(loadAt(demand, z));
      }
    }
  }
  return Math.min(1, Math.max(0, sum));
}
