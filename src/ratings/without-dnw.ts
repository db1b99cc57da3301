import { bagTables, rateBag } from './bag-model.ts';
import type { FirstLook } from './first-look.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { BagTables, Ratings } from './ratings.ts';

/**
 * What the DNWs do: the largest change of any fair or solid worth of a feature or a peg, in multiples of par, when nothing
 * is said of them. Two plain fits of the same model are compared, which differ in the DNWs alone: against the published fit, with
 * its further terms and its average over variances, those would count as well. Null where nobody failed to weigh.
 * @param tables what is published, by whose evidence a worth is fair or solid
 */
export function withoutDnw(
  venue: RatedVenue,
  { without, with: all, dnw }: Pick<FirstLook, 'without' | 'with' | 'dnw'>,
  tables: BagTables,
): Ratings['withoutDnw'] {
  if (without === null || all === null) return null;
  const [before, after] = [bagTables(rateBag(venue, all)), bagTables(rateBag(venue, without))];
  const changes = [
    ...tables.featureMonths.map(({ evidence }, i) => ({
      evidence,
      change: Math.exp(before.featureMonths[i]!.logWorth) - Math.exp(after.featureMonths[i]!.logWorth),
    })),
    ...tables.pegMonths.map(({ evidence }, i) => ({
      evidence,
      change: before.pegMonths[i]!.worth - after.pegMonths[i]!.worth,
    })),
  ];
  const largestChange = changes.reduce(
    (most, { evidence, change }) => (evidence === 'thin' ? most : Math.max(most, Math.abs(change))),
    0,
  );
  return { residualSd: { with: all.fit.residualSd, without: without.fit.residualSd }, largestChange, dnw };
}
