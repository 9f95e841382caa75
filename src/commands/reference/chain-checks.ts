/** Checks the chain engines against a file in the format of tests/reference/chain-vectors.json. */
import { chanceExceeds } from '../../falls/demand.ts';
import {
  type ChainLink,
  firstShares,
  interference,
  meanOfMinimum,
  mergeShared,
  quantiles,
  survival,
} from '../../strength/chain.ts';
import { type Distribution, meanOf, sdOf } from '../../strength/distribution.ts';
import { minimum, minimumCdf, minimumQuantile, minimumSurvival, underLoad } from '../../strength/independent-chain.ts';
import { smallerOfTwo } from '../../strength/two-normals.ts';
import { entryFault, Tally } from './tally.ts';

interface Element {
  dist?: string;
  mu?: number;
  sigma?: number;
  mu_log?: number;
  sigma_log?: number;
  shape?: number;
  scale?: number;
  a?: number[];
  s?: number;
}

interface ChainCase {
  id: string;
  type: string;
  elements?: Element[];
  load?: Element;
  inputs?: { mu: [number, number]; sigma: [number, number]; rho: number };
  expected: Record<string, unknown>;
}

/** Independent cases agree to this, relative, and to a thousandth of it absolutely where the number is small. */
const INDEPENDENT = 1e-9;
/** Cases with shared factors agree to this, absolutely or relative, whichever is wider. */
const SHARED = 1e-6;

function need(value: number | undefined, name: string): number {
  if (typeof value !== 'number') throw new Error(`${name} is missing.`);
  return value;
}

function toDistribution(element: Element): Distribution {
  switch (element.dist) {
    case 'normal':
      return { dist: 'normal', mu: need(element.mu, 'mu'), sigma: need(element.sigma, 'sigma') };
    case 'lognormal':
      return {
        dist: 'lognormal',
        muLog: need(element.mu_log, 'mu_log'),
        sigmaLog: need(element.sigma_log, 'sigma_log'),
      };
    case 'weibull':
      return { dist: 'weibull', shape: need(element.shape, 'shape'), scale: need(element.scale, 'scale') };
    default:
      throw new Error(`distribution ${element.dist} is not known: normal, lognormal or weibull.`);
  }
}

const independentAllowed = (expected: number): number => INDEPENDENT * Math.max(Math.abs(expected), 1e-3);
const sharedAllowed = (expected: number): number => SHARED * Math.max(Math.abs(expected), 1);

function entries(value: unknown): [string, number][] {
  return value && typeof value === 'object' ? (Object.entries(value) as [string, number][]) : [];
}

/** All-lognormal chains go through the model's engine as well, which is another route to the same numbers. */
function asLinks(elements: readonly Distribution[]): ChainLink[] | null {
  const links: ChainLink[] = [];
  for (const element of elements) {
    if (element.dist !== 'lognormal') return null;
    links.push({ muLog: element.muLog, shared: [], own: element.sigmaLog });
  }
  return links;
}

type Compare = (what: string, got: number, expected: unknown) => void;

function checkMinimum(elements: readonly Distribution[], expected: Record<string, unknown>, compare: Compare): void {
  const found = minimum(elements);
  compare('mean_min', found.mean, expected['mean_min']);
  compare('sd_min', found.sd, expected['sd_min']);
  compare('var_min', found.sd ** 2, expected['var_min']);
  entries(expected['p_first']).forEach(([i, value]) => {
    compare(`p_first[${i}]`, found.firstShares[Number(i)] ?? Number.NaN, value);
  });
  for (const [p, value] of entries(expected['quantiles_min'])) {
    compare(`quantile ${p}`, minimumQuantile(elements, Number(p)), value);
  }
  for (const [x, value] of entries(expected['survival_at_load'])) {
    compare(`survival at ${x}`, minimumSurvival(elements, Number(x)), value);
  }
  for (const [x, value] of entries(expected['p_fail_at_load'])) {
    compare(`failure at ${x}`, minimumCdf(elements, Number(x)), value);
  }
  elements.forEach((element, i) => {
    const means = expected['element_mean'] as number[] | undefined;
    const sds = expected['element_sd'] as number[] | undefined;
    if (means) compare(`mean of element ${i}`, meanOf(element), means[i]);
    if (sds) compare(`sd of element ${i}`, sdOf(element), sds[i]);
  });
  const links = asLinks(elements);
  if (links) checkLinks(links, expected, (what, got, value) => compare(`${what} (model's engine)`, got, value));
}

function checkLinks(links: readonly ChainLink[], expected: Record<string, unknown>, compare: Compare): void {
  const shares = firstShares(links);
  entries(expected['p_first']).forEach(([i, value]) => {
    compare(`p_first[${i}]`, shares[Number(i)] ?? Number.NaN, value);
  });
  const wanted = entries(expected['quantiles_min']);
  const found = quantiles(
    links,
    wanted.map(([p]) => Number(p)),
  );
  wanted.forEach(([p, value], i) => {
    compare(`quantile ${p}`, found[i] as number, value);
  });
  if (expected['mean_min'] !== undefined) compare('mean_min', meanOfMinimum(links), expected['mean_min']);
  const merged = mergeShared(links);
  for (const [x, value] of entries(expected['survival_at_load'])) {
    compare(`survival at ${x}`, survival(links, Number(x)), value);
    compare(`survival at ${x}, factors merged`, survival(merged, Number(x)), value);
  }
}

function checkLoad(
  elements: readonly Distribution[],
  load: Distribution,
  expected: Record<string, unknown>,
  compare: Compare,
): void {
  const found = underLoad(elements, load);
  compare('reliability', found.reliability, expected['reliability']);
  compare('p_fail', found.failure, expected['p_fail']);
  entries(expected['p_fail_attributed']).forEach(([i, value]) => {
    compare(`p_fail_attributed[${i}]`, found.attributed[Number(i)] ?? Number.NaN, value);
  });
  const wrong = expected['product_of_single_reliabilities_WRONG_if_common_load'];
  if (wrong !== undefined) {
    const product = elements.reduce((sum, element) => sum * underLoad([element], load).reliability, 1);
    compare('product of single reliabilities', product, wrong);
  }
  const links = asLinks(elements);
  if (links) compare("p_fail (model's engine)", interference(links, load), expected['p_fail']);
  // What falls bring against what an attachment bears: the same question, asked from the side of the load.
  const exceeds = chanceExceeds(load, { below: (kn) => minimumCdf(elements, kn) });
  compare('p_fail (demand of falls)', exceeds, expected['p_fail']);
}

function checkCase(tally: Tally, entry: ChainCase): void {
  const { id, type, expected } = entry;
  const isShared = type === 'shared-factor lognormal chain';
  const allowed = isShared ? sharedAllowed : independentAllowed;
  const compare: Compare = (what, got, value) => {
    if (value === undefined) return;
    if (typeof value !== 'number') throw new Error(`${what} is no number.`);
    tally.number(type, id, what, got, value, allowed(value));
  };
  if (type === 'minimum') checkMinimum((entry.elements ?? []).map(toDistribution), expected, compare);
  else if (type === 'random_load') {
    if (!entry.load) throw new Error('load is missing.');
    checkLoad((entry.elements ?? []).map(toDistribution), toDistribution(entry.load), expected, compare);
  } else if (type === 'minimum_correlated_normals') {
    if (!entry.inputs) throw new Error('inputs are missing.');
    const { mu, sigma, rho } = entry.inputs;
    const found = smallerOfTwo({ mean: mu[0], sd: sigma[0] }, { mean: mu[1], sd: sigma[1] }, rho);
    compare('mean_min', found.mean, expected['mean_min']);
    compare('sd_min', found.sd, expected['sd_min']);
    entries(expected['p_first']).forEach(([i, value]) => {
      compare(`p_first[${i}]`, found.firstShares[Number(i)] ?? Number.NaN, value);
    });
  } else if (isShared) {
    const links = (entry.elements ?? []).map((element) => ({
      muLog: need(element.mu_log, 'mu_log'),
      shared: element.a ?? [],
      own: need(element.s, 's'),
    }));
    checkLinks(links, expected, compare);
  } else tally.skip(`type ${type}`, id);
}

/** Runs every case of such a file. */
export function checkChains(file: { cases: unknown[] }): Tally {
  const tally = new Tally();
  for (const [i, raw] of file.cases.entries()) {
    const fault = entryFault(raw);
    if (fault) {
      tally.broken(`case ${i}`, fault);
      continue;
    }
    const entry = raw as ChainCase;
    const before = tally.passed + tally.failures.length;
    try {
      checkCase(tally, entry);
      // A case of a known type that gave nothing to compare is an error in the file, not a pass.
      if (tally.passed + tally.failures.length === before && !tally.skipped.has(`type ${entry.type}`)) {
        tally.broken(entry.id, 'nothing in it could be compared.');
      }
    } catch (error) {
      tally.broken(entry.id, error);
    }
  }
  return tally;
}
