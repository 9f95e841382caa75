/** One rig worked through for `/model/`: every number is the engine's own, and the steps between are its definitions. */
import { type ClassValue, type StudyEstimate, byStudy } from '../../evidence/classes.ts';
import { NINETY } from '../../evidence/observation.ts';
import { OWN_TAU_FROM } from '../../evidence/pool.ts';
import { EXAMPLE_RIG } from '../../links/rig-keys.ts';
import { serialiseLink } from '../../links/serialise-link.ts';
import { compare } from '../../strength/compare.ts';
import type { Evidence, FactorShare, LinkResult, Rig, Row } from '../../strength/types.ts';

/** The example: the rig that the comparator starts with, its wire measured, and a girth hitch. */
const RIG: Readonly<Rig> = { ...EXAMPLE_RIG, bearingMm: 3.8 };
const METHOD = 'girth-hitch';

/** One link worked through. Logarithms are of kN, or of a multiple of the rating. */
export interface WorkedLink {
  link: LinkResult;
  factor: string;
  record: Evidence['factors'][string];
  value: FactorShare;
  class: ClassValue;
  /** What each study says; empty where the factor is assumed. */
  studies: StudyEstimate[];
  /** Variance of the pooled mean; null where more went into the engine's answer than the two terms shown. */
  pooled: number | null;
  /** Sd of ln of one piece of one laboratory that we know nothing else of. */
  spread: number;
}

export interface ModelExample {
  rig: Rig;
  /** Query of the comparison that it is taken from. */
  query: string;
  row: Row;
  hitch: WorkedLink;
  connector: WorkedLink;
  device: WorkedLink;
}

function worked(evidence: Evidence, row: Row, letter: LinkResult['letter']): WorkedLink {
  const link = row.links.find((one) => one.letter === letter);
  const value = link?.factors[0];
  const record = value && evidence.factors[value.factor];
  const group = record && evidence.classes[record.class];
  if (!link || !value || !record || !group) throw new RangeError(`the example of /model/ has no link ${letter}: choose another rig in src/build/comparator/model-example.ts`);
  const seen = value.figures.flatMap((id) => evidence.figures[id]?.seen ?? []);
  const studies = byStudy(seen, group);
  const pooled = studies.length === 0 ? null : 1 / studies.reduce((sum, { variance }) => sum + 1 / (group.tau ** 2 + variance), 0);
  const isPlain = pooled !== null && studies.length < OWN_TAU_FROM && Math.abs(value.knowledge ** 2 - group.tau ** 2 - pooled) < 1e-9;
  return { link, factor: value.factor, record, value, class: group, studies, pooled: isPlain ? pooled : null, spread: Math.hypot(value.knowledge, value.specimen) };
}

/** Works the example through on some evidence. Throws a RangeError where the rig has no result. */
export function modelExample(evidence: Evidence): ModelExample {
  const row = compare(evidence, RIG).rows.find(({ method }) => method === METHOD);
  if (!row?.attachment || !row.rig) throw new RangeError('the example of /model/ has no result: choose another rig in src/build/comparator/model-example.ts');
  return {
    rig: RIG, query: serialiseLink(RIG), row,
    hitch: worked(evidence, row, 'S'), connector: worked(evidence, row, 'C'), device: worked(evidence, row, 'D'),
  };
}

/** The force that one piece in twenty breaks below, of a lognormal by itself. */
export const oneInTwenty = (muLog: number, spread: number): number => Math.exp(muLog - NINETY * spread);
