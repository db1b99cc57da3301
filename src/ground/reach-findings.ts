import { type Peg, type PegKey, pegKey, type ReachClaim } from '../domain/peg.ts';
import type { Venue } from '../domain/venue.ts';
import { TOLD_WITHIN_METRES } from './reach-targets.ts';
import type { PegSurvey, ReachTarget } from './survey.ts';

/** A claim of a record may be off the map by this much: a pole's section, and what a waggler drifts. */
export const CLAIM_WITHIN_METRES = 3;

/** What a claim can be held against: the rest of a record's reach (a shelf, a bar) is on no map. */
const MAPPED = ['far-bank', 'island', 'reeds', 'lilies', 'aerator', 'inlet'];

/** A record's claim of what lies at which distance that the map does not bear out. */
export interface ReachFinding {
  readonly peg: Peg;
  readonly what: string;
  readonly claimedMetres: number;
  /** The distance on the map nearest to the claim; null where the map has no such thing in the sector within 100 m. */
  readonly mappedMetres: number | null;
}

/** The claims of all records that differ from the map by more than 3 m. */
export function reachFindings(
  venue: Pick<Venue, 'pegs'>,
  survey: { readonly pegs: Readonly<Record<PegKey, Pick<PegSurvey, 'reach'>>> },
): readonly ReachFinding[] {
  return venue.pegs.flatMap((peg) =>
    peg.reach.filter(isOnMap).flatMap(({ what, distanceMetres }) => {
      const targets = survey.pegs[pegKey(peg.water, peg.peg)]?.reach.filter((target) => target.what === what) ?? [];
      const mappedMetres = nearestTo(distanceMetres, targets);
      const agrees = mappedMetres !== null && Math.abs(mappedMetres - distanceMetres) <= CLAIM_WITHIN_METRES;
      return agrees ? [] : [{ peg, what, claimedMetres: distanceMetres, mappedMetres }];
    }),
  );
}

/** Whether a claim is of something the survey tells of at such a distance: the far bank at any, marks up to 100 m. */
function isOnMap({ what, distanceMetres }: ReachClaim): boolean {
  return what === 'far-bank' || (MAPPED.includes(what) && distanceMetres <= TOLD_WITHIN_METRES - CLAIM_WITHIN_METRES);
}

/** A thing is claimed anywhere from its nearest point in the sector to where it lies straight out. */
function nearestTo(claimed: number, targets: readonly ReachTarget[]): number | null {
  const distances = targets.map(({ distanceMetres, aheadMetres }) =>
    Math.max(distanceMetres, Math.min(claimed, aheadMetres ?? distanceMetres)),
  );
  return distances.reduce<number | null>(
    (best, metres) => (best === null || Math.abs(metres - claimed) < Math.abs(best - claimed) ? metres : best),
    null,
  );
}
