import { beforeAll, describe, expect, test } from 'vitest';
import { monthOf } from '../../src/domain/day.ts';
import { type PegKey, pegKey } from '../../src/domain/peg.ts';
import { featuresOn } from '../../src/domain/stand.ts';
import { bagTables, fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { type EventRatio, eventRatios } from '../../src/ratings/event-ratios.ts';
import type { BagTables } from '../../src/ratings/ratings.ts';
import { demoVenue } from '../demo/demo-venue.ts';
import { trueFeatureMonths, truePegMonths, trueSpread } from '../demo/log/truth.ts';
import { type Compared, type Nearness, nearness, rawAverage } from './truth-comparison.ts';

/** The demo venue's generator knows what its log was drawn from: the ratings must find it, and better than averages do. */
describe('the ratings of the demo venue beside the truth they were drawn from', () => {
  const { venue, truth } = demoVenue();
  const stands = new Map([...venue.pegs, ...(venue.retired ?? [])].map((peg) => [pegKey(peg.water, peg.peg), peg]));
  const featuresOf = ({ from }: EventRatio) => featuresOn(stands.get(keyOf(from))!, from.event.day);
  let tables: BagTables;
  let ratios: readonly EventRatio[];
  beforeAll(() => {
    const fitted = fitBag(venue, 'total');
    tables = bagTables(rateBag(venue, fitted));
    ratios = eventRatios(fitted.sessions);
  }, 60_000);

  test('worths of features by month lie nearer to the truth than raw averages', () => {
    const truths = new Map(
      trueFeatureMonths(truth, venue.pegs).map(({ feature, month, logWorth }) => [`${feature} ${month}`, logWorth]),
    );
    const raw = (feature: string, month: number) =>
      rawAverage(
        ratios
          .filter((ratio) => monthOf(ratio.from.event.day) === month && featuresOf(ratio).includes(feature))
          .map(({ logRatio }) => logRatio),
      );
    const rows = tables.featureMonths.map((row) => ({ ...row, truth: truths.get(`${row.feature} ${row.month}`)! }));
    expectNearer(
      'features by month',
      rows.map((row) => ({ ...row, found: row.logWorth })),
      rows.map((row) => ({ ...raw(row.feature, row.month), truth: row.truth })),
    );
  });

  test('worths of pegs by month lie nearer to the truth than raw averages', () => {
    const truths = new Map(
      truePegMonths(truth, venue.pegs).map(({ water, peg, month, logWorth }) => [
        `${pegKey(water, peg)} ${month}`,
        logWorth,
      ]),
    );
    const byPegMonth = Map.groupBy(ratios, ({ from }) => `${keyOf(from)} ${monthOf(from.event.day)}`);
    const rows = tables.pegMonths.map((row) => ({ ...row, key: `${pegKey(row.water, row.peg)} ${row.month}` }));
    expectNearer(
      'pegs by month',
      rows.map((row) => ({ ...row, found: Math.log(row.worth), truth: truths.get(row.key)! })),
      rows.map(({ key }) => ({
        ...rawAverage((byPegMonth.get(key) ?? []).map(({ logRatio }) => logRatio)),
        truth: truths.get(key)!,
      })),
    );
  });

  test('standard deviations of the terms are those the effects were drawn with', () => {
    const { sd } = tables.model;
    const drawn = trueSpread(truth);
    console.info('drawn', drawn, 'found', sd);
    expect(Math.abs(Math.log(sd.residual / drawn.residual))).toBeLessThan(0.05);
    expect(Math.abs(Math.log(sd.angler / drawn.angler))).toBeLessThan(0.25);
    expect(Math.abs(Math.log(sd.peg / drawn.peg))).toBeLessThan(0.4);
    // The day's effect holds the features that all pegs of a water share, and its season.
    expect(Math.abs(Math.log(sd.event / drawn.event))).toBeLessThan(0.25);
  });
});

function keyOf({ session }: EventRatio['from']): PegKey {
  return pegKey(session.water, session.peg);
}

function expectNearer(what: string, engine: readonly Compared[], raw: readonly Compared[]): void {
  const [found, plain] = [nearness(engine), nearness(raw)];
  console.info(`${what}\n  ratings      ${sentence(found)}\n  raw averages ${sentence(plain)}`);
  expect(found.correlation).toBeGreaterThan(plain.correlation);
  expect(found.rootMeanSquareError).toBeLessThan(plain.rootMeanSquareError);
  expect(found.coverage80).toBeGreaterThan(0.72);
  expect(found.coverage80).toBeLessThan(0.9);
}

function sentence({ correlation, rootMeanSquareError, coverage80, rows }: Nearness): string {
  return `correlation ${correlation.toFixed(3)}, root mean square error ${rootMeanSquareError.toFixed(3)}, 80% intervals hold ${(100 * coverage80).toFixed(0)}% of ${rows}`;
}
