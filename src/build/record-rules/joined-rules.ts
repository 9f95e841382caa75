/** Rules of the record check that need an engine. Records import nothing above them, so these are handed to the check. */
import type { Rule } from '../../records/check/rule.ts';
import { forceIsPlausible } from './force-is-plausible.ts';
import { gapsAgree } from './gaps-agree.ts';
import { scatterBelowCeiling } from './scatter-below-ceiling.ts';
import { seriesCanBeRead } from './series-can-be-read.ts';
import { seriesIsItsFigure } from './series-is-its-figure.ts';

export const JOINED_RULES: readonly Rule[] = [forceIsPlausible, scatterBelowCeiling, gapsAgree, seriesCanBeRead, seriesIsItsFigure];
