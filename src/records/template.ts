/** Annotated empty records for someone who adds a figure or a source. */
import { KINDS, RANGE_KINDS, STANDINGS, UNITS } from './schema.ts';

const SLUG = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

/** What `new` was asked to write: a path and a text, or what is wrong with the request. */
export type Draft = { file: string; text: string } | { problem: string; advice: string };

/** Reads the words behind `npm run new --` and drafts the record. */
export function draftRecord(words: readonly string[]): Draft {
  const [what, ...names] = words;
  const usage = 'Write: npm run new -- figure <source> <result>, or: npm run new -- source <id>.';
  if (what !== 'figure' && what !== 'source')
    return { problem: what === undefined ? 'says nothing to write' : `knows no record "${what}"`, advice: usage };
  const due = what === 'figure' ? 2 : 1;
  if (names.length !== due)
    return {
      problem: `a ${what} needs ${due === 2 ? 'two names' : 'one name'}, and ${names.length === 0 ? 'none' : names.length} came`,
      advice: usage,
    };
  const bad = names.find((name) => !SLUG.test(name));
  if (bad !== undefined)
    return {
      problem: `"${bad}" is not a lower-case name with hyphens`,
      advice: 'Use a to z, digits and single hyphens, for example club-2006.',
    };
  if (what === 'source') return { file: `data/sources/${names[0]}.yaml`, text: sourceTemplate() };
  return { file: `data/figures/${names[0]}/${names[1]}.yaml`, text: figureTemplate() };
}

/** An empty figure record with six lines to fill; lines that begin with `#` are optional or explain. */
export function figureTemplate(): string {
  return `# One figure: what one place of one source prints. Folder = source, file = result.
# Six lines are yours to fill: what, value, rig, locator, checked, lowered. Look kind, unit and standing over as well.
# Lines with # are optional or explain. Remove the comments when you are done; npm run check says what is missing.

# What was measured, required or ruled, in the trade's words.
what:
# One of: ${KINDS.join(', ')}. Only what is measured gets a certainty; a rule needs no value.
kind: measured
# The number in the unit that is printed, never converted. One of these forms:
#   value: 22                                              an exact number
#   value: { tests: [11.162, 9.166] }                      raw breaks: the best there is
#   value: { tests: [9.1, 9.4], censored: [10.2] }         censored: pulls in which something else gave way first
#   value: { mean: 12.8, sd: 0.6, n: 5 }                   sd, cv and n only where printed
#   value: { low: 58, high: 68, kind: teaching }           kind: ${RANGE_KINDS.join(', ')}
#   value: { atLeast: 22, n: 3 }                           something else gave way first
#   value: { atMost: 20 }                                  "up to"; shown, never fed to the model
#   value: { statement: "words" }                          no number at all; leave the unit out
value:
# As printed, one of: ${UNITS.join(', ')}.
unit: kN
# What a share, or a comparison, is a fraction of: the address of a figure, or unknotted, strand, rated-minimum, new ...
# of: unknotted
# How it was rigged. A field that is absent means that the source does not say: never guess.
rig: {}
# rig: { method: girth-hitch, form: sewn-loop, material: hmpe, widthMm: 10, bearing: bare-wire, bearingMm: 3.8, legs: 2, pull: slow }
# Other fields: diameterMm (cord, rope, wire), state (new, used, wet ...), ageYears (5, or { from: 3, to: 5 }), note.
# Laboratory or lineage, where it is not the source itself: two figures of one study count once.
# study:
# How we know it, one of: ${STANDINGS.join(', ')}.
standing: read
# Page, table, clause or post; write not-recorded when you do not have it.
locator:
# The day you looked, in quotes.
checked: "YYYY-MM-DD"
# Steps down in certainty, each with its reason. by: method, few, indirect, disagreement, selected; steps: 1 (default) or 2.
# Only for what is measured. Fewer than ten pulls, or a count that is not printed, are a step of their own.
lowered: []
# lowered: [{ by: few, why: four pulls }, { by: method, why: "the load cell is not described" }]
# The number as printed, where YAML would change it.
# asPrinted: "22.0"
# Reason, for what is assumed.
# why:
# For a value that is worked out from others (standing: derived): + - * / ( ), sqrt, mean.
# derived: { formula: 100 * knot / straight, inputs: { knot: source/result, straight: "source/table#cell" } }
# note:
# A table: cells in place of value. A cell has its value, and of the lines above what is its own.
# cells:
#   narrow: { value: { mean: 22.4, n: 2 }, rig: { widthMm: 8 } }
#   wide: { value: { mean: 23.3, n: 2 }, rig: { widthMm: 11 } }
`;
}

/** An empty source record. */
export function sourceTemplate(): string {
  return `# One source. Its name is the folder of its figures. Remove the comments when you are done.

# One of: standard, report, article, article-journal, paper-conference, book, chapter, webpage, post, legislation, thesis.
type: report
title:
# Family name last, as printed: [M. Ibarra]. A body that signs is an author.
authors: []
# publisher:
# container:
# number:
# edition:
# Year, month or day, in quotes; unknown where the source bears none.
issued: "YYYY"
# Two letters.
language: en
# url:
# doi:
# Whether it can be read without paying.
free: true
# An informal test says so here, and how it was done.
# informal:
# The day you looked, in quotes.
checked: "YYYY-MM-DD"
# note:
`;
}
