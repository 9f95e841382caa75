/** All rules of the record check, in the order in which they are read. */
import { assumedHasReason } from './assumed-has-reason.ts';
import { classGroupsCompareLike } from './class-groups-compare-like.ts';
import { classGroupsStateN } from './class-groups-state-n.ts';
import { classSeriesStateScatter } from './class-series-state-scatter.ts';
import { comparisonShowsBreaks } from './comparison-shows-breaks.ts';
import { correctionsStillApply } from './corrections-still-apply.ts';
import { demoStaysInDemo } from './demo-stays-in-demo.ts';
import { denominatorsChain } from './denominators-chain.ts';
import { derivedRecomputes } from './derived-recomputes.ts';
import { feedFitsFactor } from './feed-fits-factor.ts';
import { fewPullsLower } from './few-pulls-lower.ts';
import { frozenVersionsStand } from './frozen-versions-stand.ts';
import { kindFitsValue } from './kind-fits-value.ts';
import { matchingFigureIsPlaced } from './matching-figure-is-placed.ts';
import { lessonsAddUp } from './lessons-add-up.ts';
import { materialHasProse } from './material-has-prose.ts';
import { materialShowsItsOwn } from './material-shows-its-own.ts';
import { methodHasProse } from './method-has-prose.ts';
import { movedTargetIsOrdinary } from './moved-target-is-ordinary.ts';
import { noCycles } from './no-cycles.ts';
import { noVerdictOfSafety } from './no-verdict-of-safety.ts';
import { oneNumberOnce } from './one-number-once.ts';
import { oneReference } from './one-reference.ts';
import { onlyMeasuredFeeds } from './only-measured-feeds.ts';
import { onlyMeasuredIsLowered } from './only-measured-is-lowered.ts';
import { proseCanBeRead } from './prose-can-be-read.ts';
import { proseNamesFigures } from './prose-names-figures.ts';
import { prose } from './prose.ts';
import { publishedIdStays } from './published-id-stays.ts';
import { ratioSaysOf } from './ratio-says-of.ts';
import { referencesExist } from './references-exist.ts';
import { ruleGrowsStricter } from './rule-grows-stricter.ts';
import type { Rule } from './rule.ts';
import { seriesGapsLower } from './series-gaps-lower.ts';
import { seriesHasItsPulls } from './series-has-its-pulls.ts';
import { seriesHasSource } from './series-has-source.ts';
import { seriesSaysItsRig } from './series-says-its-rig.ts';
import { standingHasLocator } from './standing-has-locator.ts';
import { standingHasSource } from './standing-has-source.ts';
import { studyNameIsMeant } from './study-name-is-meant.ts';
import { takenIsNeeded } from './taken-is-needed.ts';
import { termsAreClear } from './terms-are-clear.ts';
import { valueIsPossible } from './value-is-possible.ts';
import { wordsAreLowered } from './words-are-lowered.ts';

export const RULES: readonly Rule[] = [
  standingHasSource,
  standingHasLocator,
  assumedHasReason,
  kindFitsValue,
  onlyMeasuredIsLowered,
  valueIsPossible,
  ratioSaysOf,
  derivedRecomputes,
  noCycles,
  referencesExist,
  movedTargetIsOrdinary,
  publishedIdStays,
  frozenVersionsStand,
  correctionsStillApply,
  demoStaysInDemo,
  onlyMeasuredFeeds,
  oneNumberOnce,
  denominatorsChain,
  matchingFigureIsPlaced,
  feedFitsFactor,
  classSeriesStateScatter,
  classGroupsStateN,
  classGroupsCompareLike,
  takenIsNeeded,
  fewPullsLower,
  wordsAreLowered,
  studyNameIsMeant,
  oneReference,
  comparisonShowsBreaks,
  ruleGrowsStricter,
  seriesHasItsPulls,
  seriesHasSource,
  seriesSaysItsRig,
  seriesGapsLower,
  methodHasProse,
  materialHasProse,
  materialShowsItsOwn,
  prose,
  proseNamesFigures,
  proseCanBeRead,
  noVerdictOfSafety,
  termsAreClear,
  lessonsAddUp,
];
