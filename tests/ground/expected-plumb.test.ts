import { describe, expect, it } from 'vitest';
import type { Venue } from '../../src/domain/venue.ts';
import { plumbExpecter } from '../../src/ground/expected-plumb.ts';
import { surveyVenue } from '../../src/ground/survey-venue.ts';
import { smallCheckedVenue } from '../content/small-venue.ts';

const DAY = '2026-05-02';
const venue = smallCheckedVenue();
const peg = venue.pegs.find((each) => {
  const survey = surveyVenue(venue).pegs[`${each.water}/${each.peg}`];
  return survey?.lineDepths.some(({ id, depthMetres }) => id !== 'margin' && depthMetres !== null);
})!;
const line = surveyVenue(venue).pegs[`${peg.water}/${peg.peg}`]!.lineDepths.find(
  ({ id, depthMetres }) => id !== 'margin' && depthMetres !== null,
)!;
const at = (of: Venue, day = DAY) => plumbExpecter(of)(peg.water, peg.peg, line.distanceMetres, day);

describe('what a plumb should find', () => {
  it('is the depth of the sheet, with the water as it stood that day', () => {
    const still = { ...venue, gauge: [] };
    const datum = surveyVenue(still).pegs[`${peg.water}/${peg.peg}`]!.lineDepths.find(({ id }) => id === line.id)!;
    expect(at(still)).toMatchObject({ depthMetres: datum.depthMetres, isLevelKnown: false });
    const noted = venue.soundings.map((sounding) => ({ ...sounding, levelMetres: sounding.levelMetres ?? 0 }));
    const high = { ...venue, soundings: noted, gauge: [{ water: peg.water, day: DAY, levelMetres: 0.25 }] };
    const low = { ...high, gauge: [{ water: peg.water, day: DAY, levelMetres: 0 }] };
    expect(at(high)!.depthMetres! - at(low)!.depthMetres!).toBeCloseTo(0.25, 9);
    expect(at(high)!.isLevelKnown).toBe(true);
    expect(at(high, '2026-07-02')!.isLevelKnown).toBe(false);
  });

  it('refers to the zero of its own day where zero was set higher since', () => {
    const here = { water: peg.water, at: at(venue)!.at, depthMetres: 2, day: DAY, file: 'soundings/x.csv', line: 2 };
    const plain = { ...venue, gauge: [], soundings: [...venue.soundings, here] };
    const levelChanges = [{ on: '2026-06-01', metres: 0.5 }];
    const raised = { ...plain, waters: plain.waters.map((water) => ({ ...water, levelChanges })) };
    // The sounding and the plumb are both of before: what one says of the other does not change. A plumb of after finds more.
    expect(at(plain)!.depthMetres).toBeCloseTo(2, 6);
    expect(at(raised)!.depthMetres).toBeCloseTo(2, 6);
    expect(at(raised, '2026-07-02')!.depthMetres).toBeCloseTo(2.5, 6);
  });

  it('is nothing of a peg or a water that is not there', () => {
    expect(plumbExpecter(venue)('nowhere', peg.peg, 5, DAY)).toBeNull();
    expect(plumbExpecter(venue)(peg.water, '999', 5, DAY)).toBeNull();
  });
});
