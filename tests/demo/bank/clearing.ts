import type { Month } from '../../../src/domain/day.ts';
import { type Day, monthOf } from '../../../src/domain/day.ts';
import type { Clearance, Peg } from '../../../src/domain/peg.ts';
import type { Chance } from '../chance.ts';
import { rounded } from '../ground/spot.ts';

/** What a round found of a peg's clearance, and whether it was cut that day. */
export interface ClearingDay {
  readonly day: Day;
  readonly clearance: Clearance;
  readonly cut: boolean;
  /** Clear width on arrival, exactly. */
  readonly foundMetres: number;
}

/** A swim is cut when less than this is clear, outside the nesting months. */
export const CUT_BELOW_METRES = 2.6;
const JUST_CUT_METRES = 4.6;

/** Lets one peg's bank grow over the rounds, and cuts it when it is due and no nest forbids it. */
export function growAndCut(
  peg: Peg,
  days: readonly Day[],
  nestingMonths: readonly Month[],
  chance: Chance,
): ClearingDay[] {
  const metresPerRound =
    peg.features.includes('reeds') || peg.features.includes('overhang') ? 0.75 : chance.between(0.12, 0.6);
  const hasTrees = peg.features.includes('overhang') || chance.happens(0.15);
  let clear = chance.between(2.8, JUST_CUT_METRES);
  let branch = chance.between(2.4, 4);
  let path = chance.between(0.9, 1.4);
  return days.map((day) => {
    const isGrowing = monthOf(day) === 6 || monthOf(day) === 9;
    clear -= metresPerRound * (isGrowing ? 1.7 : 0.4) * chance.between(0.7, 1.3);
    branch -= isGrowing ? chance.between(0, 0.35) : 0;
    path -= isGrowing ? chance.between(0, 0.12) : 0;
    const foundMetres = clear;
    const cut = clear < CUT_BELOW_METRES && !nestingMonths.includes(monthOf(day));
    if (cut) {
      clear = JUST_CUT_METRES + chance.between(-0.5, 0.4);
      branch = Math.max(branch, chance.between(2.8, 4));
      path = Math.max(path, 1.2);
    }
    return {
      day,
      cut,
      foundMetres,
      clearance: {
        clearWidthMetres: rounded(Math.max(0.8, clear), 1),
        ...(hasTrees ? { lowestBranchMetres: rounded(Math.max(1.6, branch), 1) } : {}),
        pathWidthMetres: rounded(Math.max(0.6, path), 1),
        measuredOn: day,
      },
    };
  });
}
