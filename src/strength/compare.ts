/**
 * The comparison: for one rig, each method's state, its two results, its place on the page. Pure; the same evidence and
 * rig give the same answer to the last bit.
 */
import { type CertaintyWord, lowest } from '../evidence/certainty.ts';
import { type Miss, sameWidth } from '../evidence/factor.ts';
import type { Eye, MethodRecord, SlingRecord } from '../records/schema.ts';
import { type ChainLink, firstShares, mergeShared, quantiles, survival, winShare } from './chain.ts';
import { atRating, type BuiltLink, type PreparedEvidence, chainOf, factorNames, loadPath, prepare } from './load-path.ts';
import type { Comparison, Evidence, Figure, LinkResult, Rig, Row, Spread } from './types.ts';

/** Share of rigs from which on a link that goes first counts for the certainty of its row. Assumed: one in four. */
const COUNTS_FROM = 0.25;
/** Rows count as one where their low values differ by less, kN, ... */
const ONE_GROUP_KN = 0.5;
/** ... or where the stronger wins fewer of twenty pairs. */
const ONE_GROUP_WINS = 13 / 20;
/** Bearings this near count as one, mm: as near as the model takes them. */
const SAME_BEARING_MM = 0.5;
const DOTS = 20;
const NINETY_PERCENT = [0.05, 0.5, 0.95] as const;
const DOT_SHARES = Array.from({ length: DOTS }, (_, i) => (i + 0.5) / DOTS);
const ENDS_AND_DOTS = [...NINETY_PERCENT, ...DOT_SHARES];

const MISSES: Record<Miss, string> = {
  'other-material': 'We found no test of this method with this material.',
  'other-width': 'We found no test of this method with a sling of this width.',
  thinner: 'The bearing is thinner than any that we found a test on with this sling.',
  thicker: 'The bearing is thicker than any that we found a test on with this sling.',
  'no-figure': 'We found no test of this.',
};

/** The attachment of a method: its links, their chain for the rating at hand, and what is computed of it. */
interface Attachment {
  links: readonly BuiltLink[];
  chain: ChainLink[];
  shares: number[];
  certainty: CertaintyWord;
  spread: Spread;
  moves: Row['moves'];
  dots: number[];
}

/** One method as far as neither the rating nor the demand moves it; a row that has no numbers is complete. */
interface Base {
  record: MethodRecord;
  row: Row;
  /** Whether the numbers alone decide if it is ranked. */
  mayRank: boolean;
  /** What its numbers come from; null where it has none. Chains are for a rating of 1 kN. */
  path: {
    links: BuiltLink[];
    /** Of all links, with the device. */
    chain: ChainLink[];
    attachment: BuiltLink[];
    attachmentChain: ChainLink[];
    /** Null where it multiplies the rating too. */
    known: Attachment | null;
    /** Spread of each link by itself, for a rating of 1 kN. */
    spreads: Spread[];
  } | null;
}

/** Evidence made ready for many comparisons. */
interface Ready extends PreparedEvidence {
  /** In the order of their records. */
  methods: [string, MethodRecord][];
  /** Figures that give single breaks, as printed, with the mean of ln kN. */
  broken: { id: string; rig: Figure['rig']; tests: number[]; logMean: number }[];
  /** For the newest settings: all inputs of the rig but how much its rating and demand are. */
  bases: Map<string, Base[]>;
}

/** So many settings are kept: a reader goes back and forth between a few. */
const KEPT_SETTINGS = 8;

const prepared = new WeakMap<Evidence, Ready>();
/** What was worked out of an evidence, which never changes once it was compared with. */
function preparedOf(evidence: Evidence): Ready {
  let known = prepared.get(evidence);
  if (!known) {
    const methods = Object.entries(evidence.methods).sort(([, a], [, b]) => a.order - b.order);
    const broken = Object.values(evidence.figures).flatMap(({ id, rig, seen, value }) =>
      seen && typeof value === 'object' && 'tests' in value ? [{ id, rig, tests: value.tests, logMean: seen.logMean }] : []);
    known = { ...prepare(evidence), methods, broken, bases: new Map() };
    prepared.set(evidence, known);
  }
  return known;
}

/** A row under way. */
interface Draft { row: Row; base: Base }

const isDevice = (link: BuiltLink): boolean => link.record.part === 'device';

function letterOf(link: BuiltLink): LinkResult['letter'] {
  const { part } = link.record;
  return part === 'device' ? 'D' : part === 'knot' ? 'K' : part === 'connector' ? 'C' : part === 'eye' ? 'E' : 'S';
}

/** Ends and middle of a chain's distribution, and its twenty dots. */
function shapeOf(chain: readonly ChainLink[]): { spread: Spread; dots: number[] } {
  const [low, middle, high, ...dots] = quantiles(chain, ENDS_AND_DOTS) as [number, number, number, ...number[]];
  return { spread: { low, middle, high }, dots };
}

function spreadOf(chain: readonly ChainLink[]): Spread {
  const [low, middle, high] = quantiles(chain, NINETY_PERCENT) as [number, number, number];
  return { low, middle, high };
}

/** Shares of twenty by largest remainders, of equal ones the first, so that they add up to twenty. */
export function twentieths(shares: readonly number[]): number[] {
  const exact = shares.map((s) => s * DOTS);
  const whole = exact.map(Math.floor);
  const byRemainder = exact.map((x, i) => ({ i, rest: x - Math.floor(x) })).sort((a, b) => b.rest - a.rest);
  let missing = DOTS - whole.reduce((a, b) => a + b, 0);
  for (const { i } of byRemainder) {
    if (missing <= 0) break;
    whole[i] = (whole[i] as number) + 1;
    missing -= 1;
  }
  return whole;
}

function linkCertainty(link: BuiltLink): CertaintyWord {
  return lowest(link.parts.map((p) => p.value.certainty));
}

/** The reader's sling; null without one, and where no record has its name. */
const slingOf = (evidence: Evidence, { sling }: Rig): SlingRecord | null => (sling === null ? null : evidence.slings[sling] ?? null);

function emptyRow(evidence: Evidence, id: string, record: MethodRecord, rig: Rig): Row {
  const { share, lessWidths } = record.length;
  const sling = slingOf(evidence, rig);
  const finished = share === undefined || rig.lengthCm === null || !sling ? null : share * rig.lengthCm - (lessWidths ?? 0) * sling.widthMm / 10;
  return {
    method: id, name: record.name, state: 'no-data', group: 'no-data', reasons: [], attachment: null, rig: null,
    aboveRating: null, aboveDemand: null, dots: [], ticks: [], links: [], strip: '', certainty: null, figures: [],
    shown: [...record.shown], moves: [], oneClipError: record.oneClipError, closed: record.closed,
    // A sling that its knots would use up is too short: nothing is left, never less.
    finishedCm: finished && Math.max(0, finished),
    bulk: record.bulk ?? '',
  };
}

/** Reasons that set a method apart on this eye with this sling. */
function apartReasons(record: MethodRecord, eye: Eye, sling: SlingRecord): MethodRecord['apart'] {
  return record.apart.filter(({ when, widthMm }) =>
    (!when?.eyes || when.eyes.includes(eye)) &&
    (!when?.materials || when.materials.includes(sling.material)) &&
    (!widthMm || (sling.widthMm >= widthMm[0] && sling.widthMm <= widthMm[1])));
}

function gapFor(evidence: Evidence, method: string, rig: Rig, eye: Eye, bearingMm: number): string | undefined {
  const { sling } = rig;
  const covers = (block: Evidence['gaps'][string]['blocks'][number]): boolean =>
    (!block.used || rig.slingState === 'used') && (!block.methods || block.methods.includes(method)) && (!block.slings || block.slings.some((one) => one === sling)) &&
    (!block.eyes || block.eyes.includes(eye)) && (block.belowMm === undefined || bearingMm < block.belowMm) &&
    (block.aboveMm === undefined || bearingMm > block.aboveMm);
  const found = Object.entries(evidence.gaps).filter(([, { blocks }]) => blocks.some(covers));
  // A gap that speaks of used slings says more of a used one than those that say nothing of use.
  return (found.find(([, { blocks }]) => blocks.some((block) => block.used && covers(block))) ?? found[0])?.[0];
}

/** How far a figure is from what was asked, for choosing the nearest: bearing by its logarithm, width in centimetres. */
function remoteness(figure: Figure, sling: SlingRecord | null, bearingMm: number): number {
  const { rig } = figure;
  const bearing = rig.bearingMm === undefined ? 2 : Math.abs(Math.log(rig.bearingMm / bearingMm));
  const width = sling === null || rig.widthMm === undefined ? 1 : Math.abs(rig.widthMm - sling.widthMm) / 10;
  // Where any is of the sling's material, all that are compared are.
  const material = sling === null || rig.material === undefined ? 0 : 10;
  return bearing + width + material;
}

/**
 * The nearest tested case: one that the gap itself names, where it names any; else one that feeds the method at the eye.
 * "Weaker than" is said only of a wire thinner than one on which this very method was broken with such a sling.
 */
function nearestOf({ figures, factors, gaps }: Evidence, { id, record, sling, bearingMm }: { id: string; record: MethodRecord; sling: SlingRecord | null; bearingMm: number }, miss: Miss | null, gap: string | undefined): Row['nearest'] {
  const known = (ids: readonly string[]): Figure[] => ids.flatMap((one) => figures[one] ?? []);
  const listed = known(gap ? (gaps[gap] as Evidence['gaps'][string]).nearest : []);
  const own = known(record.links.filter((l) => l.at === 'eye').flatMap((l) => l.factors.flatMap((factor) => factors[factor]?.from ?? [])));
  const isOwn = (f: Figure): boolean => (record.riggings ?? [id]).some((one) => one === f.rig.method);
  // Its own breaks on a thicker wire say more than what the gap names.
  const ownOnWire = miss === 'thinner' ? own.filter(isOwn) : [];
  const candidates = [ownOnWire, listed, own].find((some) => some.length > 0) ?? [];
  const sameMaterial = candidates.filter((f) => sling !== null && f.rig.material === sling.material);
  const among = sameMaterial.length > 0 ? sameMaterial : candidates;
  if (among.length === 0) return undefined;
  const best = among.reduce((a, b) => (remoteness(b, sling, bearingMm) < remoteness(a, sling, bearingMm) ? b : a));
  const { seen, rig } = best;
  const weakerThan = miss === 'thinner' && isOwn(best) && bearingMm < (rig.bearingMm ?? 0) && sling !== null &&
    rig.material === sling.material && sameWidth(sling.form, rig.widthMm ?? Number.NaN, sling.widthMm);
  const isOtherBearing = Math.abs((rig.bearingMm ?? bearingMm) - bearingMm) > SAME_BEARING_MM;
  return { figure: best.id, why: best.what, kn: seen ? Math.exp(seen.logMean) : null, weakerThan, ...(isOtherBearing ? { onMm: rig.bearingMm as number } : {}) };
}

/** Whether a figure of used slings speaks for the old one as far as the reader knows it: its material, and its age within the figure's. */
function speaksForOld(figure: Figure | undefined, old: Rig['old']): boolean {
  if (!figure || !old || figure.rig.state !== 'used') return true;
  const { material, ageYears } = figure.rig;
  if (old.material !== null && material !== undefined && material !== old.material) return false;
  if (old.ageYears === null || ageYears === undefined) return true;
  return typeof ageYears === 'number' ? ageYears === old.ageYears : old.ageYears >= ageYears.from && old.ageYears < ageYears.to;
}

/** Raw breaks of the same method and material on the same kind of eye and near bearing, kN. */
function ticksOf({ broken }: Ready, names: readonly string[], sling: SlingRecord, eye: Eye, bearingMm: number): Row['ticks'] {
  const kind = eye === 'bare-wire' ? eye : eye === 'metal-bar' ? 'pin' : undefined;
  return broken.flatMap(({ id, rig, tests, logMean }) => {
    if (!kind || rig.bearing !== kind || !names.some((name) => name === rig.method) || rig.material !== sling.material) return [];
    if (rig.bearingMm === undefined || Math.abs(rig.bearingMm - bearingMm) > SAME_BEARING_MM) return [];
    // What is not a number is near none.
    if (!sameWidth(sling.form, rig.widthMm ?? rig.diameterMm ?? Number.NaN, sling.widthMm)) return [];
    const scale = Math.exp(logMean - tests.reduce((sum, x) => sum + Math.log(x), 0) / tests.length);
    return [{ figure: id, kn: tests.map((x) => x * scale) }];
  });
}

function linkResults({ links, spreads }: NonNullable<Base['path']>, shares: readonly number[], ratingKn: number | null): LinkResult[] {
  return links.map((link, i) => {
    const { low, middle, high } = spreads[i] as Spread;
    const times = link.ofRating ? (ratingKn ?? 1) : 1;
    return {
      name: link.record.name,
      part: link.record.part,
      letter: letterOf(link),
      ...(link.record.legs === undefined ? {} : { legs: link.record.legs }),
      spread: { low: low * times, middle: middle * times, high: high * times },
      certainty: linkCertainty(link),
      factors: link.parts.map(({ factor, value }) => ({ factor, ...value })),
      first: shares[i] as number,
    };
  });
}

/** The two factors that bring most of the ln-variance of the attachment, each link weighted by how often it goes first. */
function movesOf(links: readonly BuiltLink[], shares: readonly number[]): Row['moves'] {
  const brought = new Map<string, { figures: string[]; variance: number }>();
  let total = 0;
  links.forEach((link, i) => {
    const weight = shares[i] as number;
    total += weight * link.specimen ** 2;
    for (const { factor, value } of link.parts) {
      const known = brought.get(factor) ?? { figures: value.figures, variance: 0 };
      known.variance += weight * value.knowledge ** 2;
      total += weight * value.knowledge ** 2;
      brought.set(factor, known);
    }
  });
  return [...brought].map(([factor, { figures, variance }]) => ({ factor, figures, share: variance / total }))
    .sort((a, b) => b.share - a.share).slice(0, 2);
}

/** Chain of some links with no more shared factors than it needs, for a rating of 1 kN. */
const mergedChain = (links: readonly BuiltLink[]): ChainLink[] => mergeShared(chainOf(links, factorNames(links)));

function pathOf(links: BuiltLink[]): NonNullable<Base['path']> {
  const attachment = links.filter((l) => !isDevice(l));
  const attachmentChain = mergedChain(attachment);
  return {
    links, chain: attachment.length === links.length ? attachmentChain : mergedChain(links), attachment, attachmentChain,
    known: attachment.some((link) => link.ofRating) ? null : attachmentOf(attachment, attachmentChain),
    spreads: links.map((link) => spreadOf(chainOf([link], link.parts.map((part) => part.factor)))),
  };
}

function attachmentOf(links: readonly BuiltLink[], chain: ChainLink[]): Attachment {
  const shares = firstShares(chain);
  return {
    links, chain, shares, ...shapeOf(chain), moves: movesOf(links, shares),
    certainty: lowest(links.filter((_, i) => (shares[i] as number) >= COUNTS_FROM).map(linkCertainty)),
  };
}

/**
 * Whether a row is known well enough to rank: what goes first and the sling at the eye certain enough, and nothing that
 * counts carried over from another width. (Between two bearings the certainty is the lower end's.)
 */
function isKnown({ certainty, links }: Attachment, whole: readonly BuiltLink[], shares: readonly number[]): boolean {
  if (certainty === 'very low') return false;
  if (links.some((link) => link.record.at === 'eye' && linkCertainty(link) === 'very low')) return false;
  return !whole.some((link, i) => !isDevice(link) && (shares[i] as number) >= 1 / DOTS && link.parts.some((p) => p.value.bridged));
}

/** A base with the numbers for one rating and demand. */
function draftOf(base: Base, { ratingKn, demandKn }: Rig): Draft {
  const { path, record } = base;
  if (!path) return { row: base.row, base };
  const attachment = path.known ?? attachmentOf(path.attachment, atRating(path.attachmentChain, path.attachment, ratingKn));
  const isWhole = path.attachment.length === path.links.length;
  const chain = isWhole ? attachment.chain : atRating(path.chain, path.links, ratingKn);
  const shares = isWhole ? attachment.shares : firstShares(chain);
  // Against the rating the attachment is counted; against anything else the whole rig, for the device must bear it too.
  const { spread, dots } = isWhole ? attachment : demandKn === null ? { spread: spreadOf(chain), dots: attachment.dots } : shapeOf(chain);
  const aboveRating = ratingKn === null ? null : survival(attachment.chain, ratingKn);
  const links = linkResults(path, shares, ratingKn);
  return {
    base,
    row: {
      ...base.row, dots, aboveRating, links,
      aboveDemand: demandKn === null ? aboveRating : survival(chain, demandKn),
      attachment: attachment.spread,
      rig: ratingKn === null ? null : spread,
      strip: twentieths(shares).map((count, i) => (links[i] as LinkResult).letter.repeat(count)).join(''),
      // Nothing was measured for the maker's sling but the rating: a word of certainty would set it beside methods that it stands above.
      certainty: record.role === 'reference' ? null : attachment.certainty,
      figures: [...new Set(links.flatMap((l) => l.factors.flatMap((f) => f.figures)))],
      moves: attachment.moves,
      group: base.mayRank && isKnown(attachment, path.links, shares) ? 'ranked' : base.row.group,
    },
  };
}

/** Chance that the attachment of `a` breaks above that of `b`; both have numbers. */
function beats(a: Base, b: Base, ratingKn: number | null): number {
  const [first, second] = [a, b].map((base) => (base.path as NonNullable<Base['path']>).attachment) as [BuiltLink[], BuiltLink[]];
  const names = factorNames(first, second);
  return winShare(atRating(chainOf(first, names), first, ratingKn), atRating(chainOf(second, names), second, ratingKn));
}

/** Of what is ranked: nothing very low is. */
const CERTAINTY_ORDER: readonly CertaintyWord[] = ['high', 'moderate', 'low'];

/** Orders the ranked rows by their 1-in-20 low value and gives one place to those that count as one. */
function rank(drafts: Draft[], ratingKn: number | null): Draft[] {
  const sorted = [...drafts].sort((a, b) => (b.row.attachment as Spread).low - (a.row.attachment as Spread).low);
  const groups: Draft[][] = [];
  for (const draft of sorted) {
    const leader = groups.at(-1)?.[0];
    const close = leader !== undefined && ((leader.row.attachment as Spread).low - (draft.row.attachment as Spread).low < ONE_GROUP_KN || beats(leader.base, draft.base, ratingKn) < ONE_GROUP_WINS);
    if (close) (groups.at(-1) as Draft[]).push(draft);
    else groups.push([draft]);
  }
  let place = 1;
  for (const group of groups) {
    for (const { row } of group) row.place = place;
    place += group.length;
    group.sort((a, b) => CERTAINTY_ORDER.indexOf(a.row.certainty as CertaintyWord) - CERTAINTY_ORDER.indexOf(b.row.certainty as CertaintyWord) || a.base.record.order - b.base.record.order);
  }
  return groups.flat();
}

const NUMBER_WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen', 'twenty'];
const inWords = (count: number): string => NUMBER_WORDS[count] ?? String(count);

function summaryOf(rows: readonly Row[], hasSling: boolean): string {
  if (!hasSling) return 'Choose a sling to see what has been tested with it.';
  const count = (group: Row['group']): number => rows.filter((r) => r.group === group).length;
  const ranked = count('ranked');
  const first = `On this eye with this sling ${inWords(ranked)} home method${ranked > 1 ? 's' : ''} can be ranked.`;
  const others = ([['unranked', 'computed on too little to rank'], ['apart', 'set apart'], ['no-data', 'without data'], ['other-sling', 'made from another sling']] as const)
    .filter(([group]) => count(group) > 0).map(([group, what]) => `${inWords(count(group))} ${what}`);
  return others.length === 0 ? first : `${first} ${sentence(others)}.`;
}

function sentence(parts: readonly string[]): string {
  const text = parts.length === 1 ? (parts[0] as string) : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** State of one method, and what its numbers come from. Reads neither the demand nor how much the rating is. */
function baseOf(ready: Ready, id: string, record: MethodRecord, rig: Rig, eye: Eye, bearingMm: number): Base {
  const { evidence } = ready;
  const row = emptyRow(evidence, id, record, rig);
  const base: Base = { record, row, mayRank: false, path: null };
  const chosen = slingOf(evidence, rig);
  const independent = record.role !== 'home';
  /** What the method is made from; the maker's and the old sling do not depend on the sling that the reader chose. */
  const sling = independent ? null : chosen;
  if (record.role === 'comparison') {
    row.group = 'comparison';
    const isWireOnly = (shown: string): boolean => evidence.figures[shown]?.rig.form === 'wire';
    row.shown = row.shown.filter((shown) => speaksForOld(evidence.figures[shown], rig.old) && (eye !== 'metal-bar' || !isWireOnly(shown)));
  }
  if (sling && !record.takes.includes(sling.form)) {
    row.state = 'other-sling';
    row.group = 'other-sling';
    row.reasons = ['It is made from another kind of sling than this one.'];
    return base;
  }
  const stopWith = (reason: string, miss: Miss | null): Base => {
    const gap = gapFor(evidence, id, rig, eye, bearingMm);
    if (gap) row.gap = gap;
    const nearest = nearestOf(evidence, { id, record, sling: chosen, bearingMm }, miss, gap);
    if (nearest && (record.role !== 'comparison' || speaksForOld(evidence.figures[nearest.figure], rig.old))) row.nearest = nearest;
    row.reasons = record.role === 'comparison' && row.shown.length === 0 ? ['We found no published test of a used sling of this material and age.'] : [reason];
    return base;
  };
  if (!independent && !chosen) {
    row.reasons = ['Choose a sling first.'];
    return base;
  }
  if (!independent && rig.slingState === 'used') return stopWith('The tests were made with new slings; we found none that says what a used one keeps in a hitch or a knot.', null);
  if (!record.eyes.includes(eye)) {
    return stopWith(record.eyes.length === 1 ? 'It is for another kind of eye than this one.' : 'We found no test of this method on this kind of eye.', null);
  }
  if (record.role === 'reference' && rig.ratingKn === null) {
    row.reasons = ['Its strength is known only as the rating on the device; without a readable rating there is no number.'];
    row.group = 'maker';
    row.state = 'result';
    return base;
  }
  const reasons = sling ? apartReasons(record, eye, sling) : [];
  const published = reasons.flatMap((r) => r.published);
  // Where the method does not depend on it, any sling will do for matching.
  const any = chosen ?? (Object.values(evidence.slings)[0] as SlingRecord);
  const sought = { material: any.material, form: any.form, widthMm: any.widthMm, bearingMm };
  const path = loadPath(ready, record, sought, rig.ratingKn !== null);
  // What was broken over pins alone says nothing of a wire, however thick.
  const isOnPinsAlone = (link: BuiltLink): boolean => link.record.at === 'eye' && link.parts.some(({ factor }) => (evidence.factors[factor] as Evidence['factors'][string]).applies.bearings?.includes('bare-wire') === false);
  if ('stop' in path) {
    if (published.length === 0) return stopWith(MISSES[path.stop.miss], path.stop.miss);
  } else if (eye !== 'metal-bar' && path.links.some(isOnPinsAlone)) {
    if (published.length === 0) return stopWith('We found no test of this on a wire.', null);
  } else {
    base.path = pathOf(path.links);
    if (chosen) row.ticks = ticksOf(ready, record.riggings ?? [id], chosen, eye, bearingMm);
  }
  row.shown = [...new Set([...row.shown, ...reasons.flatMap((r) => [...r.published, ...r.figures])])];
  row.reasons = [...(row.finishedCm === 0 ? ['A sling of this length is too short: its knots and turns use it up.'] : []), ...reasons.map((r) => r.why)];
  row.state = row.reasons.length > 0 ? 'apart' : 'result';
  if (record.role === 'reference') row.group = 'maker';
  else if (record.role === 'comparison') row.group = 'comparison';
  else if (row.state === 'apart') row.group = 'apart';
  else {
    row.group = 'unranked';
    // A bearing that was not measured is no tested bearing: it is computed with, but nothing is ranked on it.
    base.mayRank = rig.bearingMm !== null && rig.eye !== null && !row.oneClipError.releases && row.closed.possible;
  }
  return base;
}

/** Diameter that a rig is computed with, mm. */
const bearingOf = (ready: Ready, rig: Rig): number => rig.bearingMm ?? ready.smallestBearingMm;

/** All methods for one rig, kept for the next rating or demand. */
function basesOf(ready: Ready, rig: Rig): Base[] {
  const setting = JSON.stringify({ ...rig, ratingKn: rig.ratingKn !== null, demandKn: null });
  let bases = ready.bases.get(setting);
  if (!bases) {
    bases = ready.methods.map(([id, record]) => baseOf(ready, id, record, rig, rig.eye ?? 'bare-wire', bearingOf(ready, rig)));
    ready.bases.set(setting, bases);
    for (const oldest of ready.bases.keys()) if (ready.bases.size > KEPT_SETTINGS) ready.bases.delete(oldest);
  }
  return bases;
}

/**
 * Compares all methods of the evidence for one rig. What the rating and the demand leave alone is the same object as in
 * the comparison before, so that a view can tell what has changed; nobody may write to it. Throws RangeErrors only for
 * faults of the evidence.
 */
export function compare(evidence: Evidence, rig: Rig): Comparison {
  const ready = preparedOf(evidence);
  const drafts = basesOf(ready, rig).map((base) => draftOf(base, rig));
  const of = (group: Row['group']): Draft[] => drafts.filter((d) => d.row.group === group);
  const ordered = [...of('maker'), ...rank(of('ranked'), rig.ratingKn), ...of('unranked'), ...of('apart'), ...of('comparison'), ...of('no-data'), ...of('other-sling')];
  const rows = ordered.map((d) => d.row);
  return {
    evidence: evidence.version, model: evidence.model, rig,
    bearing: { mm: bearingOf(ready, rig), measured: rig.bearingMm !== null },
    rows, summary: summaryOf(rows, slingOf(evidence, rig) !== null),
  };
}

/** What one method comes from. Throws a RangeError where there is no such method. */
function baseFor(ready: Ready, rig: Rig, id: string): Base {
  const base = basesOf(ready, rig)[ready.methods.findIndex(([method]) => method === id)];
  if (!base) throw new RangeError(`method ${id}: no such record`);
  return base;
}

/** Chance that method `a` breaks above method `b` in one pull each on the same device; null where either has no result. */
export function wins(evidence: Evidence, rig: Rig, a: string, b: string): number | null {
  const ready = preparedOf(evidence);
  const first = baseFor(ready, rig, a);
  const second = baseFor(ready, rig, b);
  return first.path && second.path ? beats(first, second, rig.ratingKn) : null;
}

/** One method against another, both on the same device with the same sling. */
export interface Pair { method: string; name: string; /** Share of pairs of pulls in which the first breaks above this one. */ wins: number }

/**
 * One method against each other one with a number for this rig, in the order of the page. Home methods only: none is
 * set beside the maker's sling, whose strength is known as the rating alone.
 */
export function pairsOf(evidence: Evidence, { rig, rows }: Comparison, method: string): Pair[] {
  const ready = preparedOf(evidence);
  const computed = rows.filter((row) => row.attachment && evidence.methods[row.method]?.role === 'home');
  if (!computed.some((row) => row.method === method)) return [];
  const first = baseFor(ready, rig, method);
  return computed.filter((row) => row.method !== method)
    .map((row) => ({ method: row.method, name: row.name, wins: beats(first, baseFor(ready, rig, row.method), rig.ratingKn) }));
}
