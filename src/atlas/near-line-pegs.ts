import { formatDay } from '../domain/day.ts';
import { lineDistanceWords, lineNameWords } from '../domain/overhead-line-words.ts';
import { pegKey } from '../domain/peg.ts';
import { isClosedForGood } from '../domain/peg-verdict.ts';
import { countsMetres, needsMeasuredDistance } from '../ground/stand-off.ts';
import { type Atlas, surveyOfPeg } from './atlas.ts';
import { factsOfPeg, type PegStanding, standingOfPeg } from './peg-verdicts.ts';
import { pegLink } from './site-link.ts';

/** An open peg outside the stand-off of a line by no more than a fifth of it. */
export interface NearLinePeg {
  readonly peg: string;
  readonly href: string;
  readonly standing: PegStanding;
  /** "Osier line, 11 kV". */
  readonly line: string;
  /** Platform or swept area, whichever is nearer, after the allowances, rounded down. */
  readonly counts: string;
  /** "44 m, tape, 14 Nov 2026"; null where nobody measured it: then it asks for a tape. */
  readonly measured: string | null;
}

/** Every peg near a line that nothing closes for good, the nearest first. */
export function nearLinePegs(atlas: Atlas): readonly NearLinePeg[] {
  const { units } = atlas.venue.settings;
  return atlas.venue.pegs
    .filter((peg) => !isClosedForGood(factsOfPeg(atlas, peg)))
    .flatMap((peg) =>
      surveyOfPeg(atlas, pegKey(peg.water, peg.peg))
        .standOffs.filter(({ verdict }) => verdict === 'near')
        .map((standOff) => ({ peg, standOff })),
    )
    .sort((a, b) => countsMetres(a.standOff) - countsMetres(b.standOff))
    .map(({ peg, standOff }) => {
      const measured = peg.measuredLineDistance;
      return {
        peg: `${atlas.watersById.get(peg.water)?.name ?? peg.water} ${peg.peg}`,
        href: pegLink(peg.water, peg.peg),
        standing: standingOfPeg(atlas, peg),
        line: lineNameWords(standOff),
        counts: lineDistanceWords(countsMetres(standOff), units),
        measured:
          measured === undefined || needsMeasuredDistance(peg, [standOff])
            ? null
            : `${lineDistanceWords(measured.distanceMetres, units)}, ${measured.method}, ${formatDay(measured.measuredOn)}`,
      };
    });
}
