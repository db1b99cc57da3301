import { type BagModel, bagTables, fitBag, rateBag } from './bag-model.ts';
import { startFrom } from './fit-ratings.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { BagTables, Ratings } from './ratings.ts';

/**
 * What the assumption about DNWs does: the total bag fitted once more without them, and the largest change of any fair or
 * solid return of a feature or a peg, in multiples of par. Null where nobody failed to weigh.
 */
export function withoutDnw(venue: RatedVenue, total: BagModel, tables: BagTables): Ratings['withoutDnw'] {
  const dnw = total.sessions.filter(({ session }) => session.status === 'dnw').length;
  if (dnw === 0) return null;
  const fitted = fitBag(venue, 'total', { withoutDnw: true }, { start: startFrom(total.fit), variances: 'mode' });
  const without = bagTables(rateBag(venue, fitted));
  const changes = [
    ...tables.featureMonths.map(({ logReturn, evidence }, i) => ({
      evidence,
      change: Math.exp(logReturn) - Math.exp(without.featureMonths[i]!.logReturn),
    })),
    ...tables.pegMonths.map((row, i) => ({
      evidence: row.evidence,
      change: row.return - without.pegMonths[i]!.return,
    })),
  ];
  const largest = changes.reduce(
    (most, { evidence, change }) => (evidence === 'thin' ? most : Math.max(most, Math.abs(change))),
    0,
  );
  return { residualSd: fitted.fit.residualSd, largestChange: largest, dnw };
}
