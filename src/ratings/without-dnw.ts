import { bagTables, rateBag } from './bag-model.ts';
import type { FirstLook } from './first-look.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { BagTables, Ratings } from './ratings.ts';

/**
 * What the DNWs do: the largest change of any fair or solid worth of a feature or a peg, in multiples of par, when nothing
 * is said of them. Null where nobody failed to weigh.
 */
export function withoutDnw(
  venue: RatedVenue,
  { without, dnw }: Pick<FirstLook, 'without' | 'dnw'>,
  tables: BagTables,
): Ratings['withoutDnw'] {
  if (without === null) return null;
  const other = bagTables(rateBag(venue, without));
  const changes = [
    ...tables.featureMonths.map(({ logWorth, evidence }, i) => ({
      evidence,
      change: Math.exp(logWorth) - Math.exp(other.featureMonths[i]!.logWorth),
    })),
    ...tables.pegMonths.map((row, i) => ({
      evidence: row.evidence,
      change: row.worth - other.pegMonths[i]!.worth,
    })),
  ];
  const largest = changes.reduce(
    (most, { evidence, change }) => (evidence === 'thin' ? most : Math.max(most, Math.abs(change))),
    0,
  );
  return { residualSd: without.fit.residualSd, largestChange: largest, dnw };
}
