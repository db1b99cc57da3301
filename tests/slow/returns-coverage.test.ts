import { beforeAll, describe, expect, it } from 'vitest';
import type { Venue } from '../../src/domain/venue.ts';
import { bagTables, fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import type { BagTables } from '../../src/ratings/ratings.ts';
import { type Truth, trueFeatureMonths, truePegMonths } from '../demo/log/truth.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';
import { type Compared, nearness } from '../ratings/truth-comparison.ts';

const SEEDS = Array.from({ length: 24 }, (_, i) => i + 1);

function rated(venue: Venue): BagTables {
  return bagTables(rateBag(venue, fitBag(venue, 'total')));
}

function featureMonths({ featureMonths: found }: BagTables, truth: Truth, venue: Venue): Compared[] {
  const truths = new Map(
    trueFeatureMonths(truth, venue.pegs).map((row) => [`${row.feature} ${row.month}`, row.logReturn]),
  );
  return found.map((row) => ({
    found: row.logReturn,
    truth: truths.get(`${row.feature} ${row.month}`)!,
    ...bounds(row),
  }));
}

function pegMonths({ pegMonths: found }: BagTables, truth: Truth, venue: Venue): Compared[] {
  const key = (row: { water: string; peg: string; month: number }) => `${row.water}/${row.peg} ${row.month}`;
  const truths = new Map(truePegMonths(truth, venue.pegs).map((row) => [key(row), row.logReturn]));
  return found.map((row) => ({ found: Math.log(row.return), truth: truths.get(key(row))!, ...bounds(row) }));
}

const bounds = ({ low80, high80 }: { readonly low80: number; readonly high80: number }) => ({ low80, high80 });

/**
 * How truths move with what was found: 1 where a return means what it says. Below 1 returns are told too boldly, above 1
 * they are pulled towards par by more than their doubt accounts for.
 */
function truthOnFound(rows: readonly Compared[]): number {
  return rows.reduce((sum, r) => sum + r.found * r.truth, 0) / rows.reduce((sum, r) => sum + r.found ** 2, 0);
}

/** The same log told as if every unlisted or unweighed session had never been. */
function withoutCensoring(venue: Venue): Venue {
  return {
    ...venue,
    events: venue.events.map((event) => ({ ...event, listing: 'full' as const })),
    sessions: venue.sessions.filter(({ status }) => status === 'weighed'),
  };
}

function line(name: string, rows: readonly Compared[], fits: readonly BagTables[]): string {
  const { coverage80, rootMeanSquareError, correlation } = nearness(rows);
  const residual = fits.reduce((sum, { model }) => sum + model.sd.residual, 0) / fits.length;
  return [
    name.padEnd(44),
    `covers ${(100 * coverage80).toFixed(1)}%`,
    `truth on found ${truthOnFound(rows).toFixed(3)}`,
    `error ${rootMeanSquareError.toFixed(4)}`,
    `correlation ${correlation.toFixed(3)}`,
    `residual ${residual.toFixed(3)}`,
  ].join('   ');
}

describe('on 24 venues drawn from the model', () => {
  const features: Compared[] = [];
  const pegs: Compared[] = [];
  const fits: BagTables[] = [];

  beforeAll(() => {
    for (const seed of SEEDS) {
      const { venue, truth } = simulateFromModel({ seed });
      const tables = rated(venue);
      fits.push(tables);
      features.push(...featureMonths(tables, truth, venue));
      pegs.push(...pegMonths(tables, truth, venue));
    }
    console.info(`${line('features by month', features, fits)}\n${line('pegs by month', pegs, fits)}`);
  });

  it('80% intervals of features and pegs by month hold 76 to 84% of the truths', () => {
    const { coverage80 } = nearness([...features, ...pegs]);
    expect(coverage80).toBeGreaterThanOrEqual(0.76);
    expect(coverage80).toBeLessThanOrEqual(0.84);
  });

  it('a return means what it says: truths move with it one to one', () => {
    expect(Math.abs(truthOnFound(features) - 1)).toBeLessThan(0.05);
    expect(Math.abs(truthOnFound(pegs) - 1)).toBeLessThan(0.05);
  });
});

describe('with 10% DNW and a third of the events listing the frame only', () => {
  const complete: Compared[] = [];
  const kept: Compared[] = [];
  const dropped: Compared[] = [];
  const fits: Record<'complete' | 'kept' | 'dropped', BagTables[]> = { complete: [], kept: [], dropped: [] };

  beforeAll(() => {
    for (const seed of SEEDS) {
      const whole = simulateFromModel({ seed });
      const hidden = simulateFromModel({ seed, dnwShare: 0.1, frameOnlyShare: 0.33 });
      const add = (into: Compared[], of: BagTables[], venue: Venue, truth: Truth) => {
        const tables = rated(venue);
        of.push(tables);
        into.push(...featureMonths(tables, truth, venue), ...pegMonths(tables, truth, venue));
      };
      add(complete, fits.complete, whole.venue, whole.truth);
      add(kept, fits.kept, hidden.venue, hidden.truth);
      add(dropped, fits.dropped, withoutCensoring(hidden.venue), hidden.truth);
    }
    const lines = [
      line('nothing hidden', complete, fits.complete),
      line('hidden weights as upper bounds', kept, fits.kept),
      line('hidden weights dropped', dropped, fits.dropped),
    ];
    console.info(lines.join('\n'));
  });

  it('returns keep their meaning where hidden weights stay in as upper bounds, and lose it where they are dropped', () => {
    const withBounds = Math.abs(truthOnFound(kept) - 1);
    expect(withBounds).toBeLessThan(0.05);
    expect(Math.abs(truthOnFound(dropped) - 1)).toBeGreaterThan(2 * withBounds);
  });

  it('intervals still hold 76 to 84% of the truths', () => {
    const { coverage80 } = nearness(kept);
    expect(coverage80).toBeGreaterThanOrEqual(0.76);
    expect(coverage80).toBeLessThanOrEqual(0.84);
  });

  it('upper bounds beat dropping by error', () => {
    expect(nearness(kept).rootMeanSquareError).toBeLessThan(nearness(dropped).rootMeanSquareError);
  });
});
