import { bagTables, rateBag } from './bag-model.ts';
import type { FirstLook } from './first-look.ts';
import { type FitReport, fitReport } from './fit-report.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { BagTables, FeatureMonth, PegMonth, Ratings } from './ratings.ts';

/** What the DNWs do to every worth, and how the fit without them ended. Plain data, so that it can be kept. */
export interface DnwEffect {
  readonly residualSd: { readonly with: number; readonly without: number };
  readonly fit: FitReport;
  /** In multiples of par, by what the worth is of. */
  readonly changes: Readonly<Record<string, number>>;
}

const WITHOUT_DNW = 'total without DNWs';

/**
 * Two plain fits of the same model compared, which differ in the DNWs alone: against the published fit, with its further terms and its
 * average over variances, those would count as well. Null where nobody failed to weigh.
 */
export function dnwEffect(venue: RatedVenue, look: Pick<FirstLook, 'without' | 'with'>): DnwEffect | null {
  const { without } = look;
  const all = look.with();
  if (without === null || all === null) return null;
  const [before, after] = [bagTables(rateBag(venue, all)), bagTables(rateBag(venue, without))];
  const changes = [
    ...before.featureMonths.map((row, i) => [
      featureKey(row),
      Math.exp(row.logWorth) - Math.exp(after.featureMonths[i]!.logWorth),
    ]),
    ...before.pegMonths.map((row, i) => [pegKey(row), row.worth - after.pegMonths[i]!.worth]),
  ];
  return {
    residualSd: { with: all.fit.residualSd, without: without.fit.residualSd },
    fit: fitReport(WITHOUT_DNW, without.fit),
    changes: Object.fromEntries(changes),
  };
}

/**
 * The largest change of any fair or solid worth of a feature or a peg when nothing is said of the DNWs.
 * @param tables what is published, by whose evidence a worth is fair or solid
 * @param dnw how many did not weigh
 */
export function withoutDnw(effect: DnwEffect | null, tables: BagTables, dnw: number): Ratings['withoutDnw'] {
  if (effect === null) return null;
  const keys = [
    ...tables.featureMonths.flatMap((row) => (row.evidence === 'thin' ? [] : [featureKey(row)])),
    ...tables.pegMonths.flatMap((row) => (row.evidence === 'thin' ? [] : [pegKey(row)])),
  ];
  const largestChange = keys.reduce((most, key) => Math.max(most, Math.abs(effect.changes[key] ?? 0)), 0);
  return { residualSd: effect.residualSd, largestChange, dnw };
}

function featureKey({ feature, month }: Pick<FeatureMonth, 'feature' | 'month'>): string {
  return JSON.stringify([feature, month]);
}

function pegKey({ water, peg, month }: Pick<PegMonth, 'water' | 'peg' | 'month'>): string {
  return JSON.stringify([water, peg, month]);
}
