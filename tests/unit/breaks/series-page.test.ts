/** Series joined to their figures and to the model. */
import { expect, test } from 'vitest';
import { EXAMPLE_RIG } from '../../../src/links/rig-keys.ts';
import { compare } from '../../../src/strength/compare.ts';
import { loadEvidence } from '../../../src/build/evidence.ts';
import { allSeries, besideSeries, modelOfSeries, type ShownSeries } from '../../../src/build/series/page.ts';

const series = (id: string): ShownSeries => allSeries().get(id) as ShownSeries;

test('pulls that a source prints in pound-force are computed in kN, by the pound-force of NIST SP 811', () => {
  // 3798 lbf of the first loop; one lbf is exactly 4.4482216152605 N.
  expect(series('jones-water-knot').pulls[0]?.force).toBe(16.894345694759379);
  expect(series('jones-water-knot').printed.pulls[0]?.force).toBe(3798);
});

test('a series beside another is compared pull by pull: every sewn loop broke above every knotted one', () => {
  // As printed: sewn 5579 to 5981 lbf, knotted 3798 to 4585 lbf.
  const [one] = besideSeries(series('harmston-sewn-nylon'));
  expect([one?.other.id, one?.compared.chance.chance]).toEqual(['jones-water-knot', 1]);
});

test('the model answers for a girth hitch on a wire as the comparator does for the same rig', () => {
  const model = modelOfSeries(series('ibarra-girth-on-wire'));
  const rig = { ...EXAMPLE_RIG, ratingKn: 12, eye: 'bare-wire' as const, bearingMm: 3.8, sling: 'hmpe-10', slingState: 'new' as const };
  const row = compare(loadEvidence(), rig).rows.find(({ method }) => method === 'girth-hitch');
  expect('row' in model && model.row.attachment).toEqual(row?.attachment);
  expect('row' in model && model.row.figures).toContain('ibarra-2021/girth-on-wire');
});

test.each([
  ['a strand with a knot', 'dimeo-figure-eight', 'method'],
  ['a hitch of sling on sling', 'harmston-girth-nylon-on-nylon', 'method'],
  ['a drop', 'gear-room-girth-drop', 'pull'],
])('the model has no answer for %s, and says why', (_, id, why) => {
  expect(modelOfSeries(series(id))).toMatchObject({ why });
});

test('what an eye is not, a sling is not, or is not new, has no answer of the model', () => {
  const { rig } = series('ibarra-girth-on-wire');
  const why = (change: Partial<typeof rig>) => {
    const model = modelOfSeries({ rig: { ...rig, ...change } });
    return 'why' in model ? model.why : 'an answer';
  };
  expect([why({}), why({ bearing: 'drum' }), why({ bearingMm: undefined }), why({ widthMm: 26 }), why({ widthMm: undefined }), why({ state: 'used' })]).toEqual(['an answer', 'bearing', 'bearing', 'sling', 'sling', 'state']);
});

test('an invented series has no source and no figure, and stands beside invented ones alone', () => {
  const invented = [...allSeries().values()].filter((one) => one.invented);
  expect(invented.length).toBeGreaterThan(1);
  for (const one of invented) {
    expect([one.standing, one.source, one.figure]).toEqual(['invented', null, null]);
    expect(besideSeries(one).every(({ other }) => other.invented)).toBe(true);
  }
});
