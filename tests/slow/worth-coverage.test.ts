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
    trueFeatureMonths(truth, venue.pegs).map((row) => [`${row.feature} ${row.month}`, row.logWorth]),
  );
  return found.map((row) => ({
    found: row.logWorth,
    truth: truths.get(`${row.feature} ${row.month}`)!,
    ...bounds(row),
  }));
}

function pegMonths({ pegMonths: found }: BagTables, truth: Truth, venue: Venue): Compared[] {
  const key = (row: { water: string; peg: string; month: number }) => `${row.water}/${row.peg} ${row.month}`;
  const truths = new Map(truePegMonths(truth, venue.pegs).map((row) => [key(row), row.logWorth]));
  return found.map((row) => ({ found: Math.log(row.worth), truth: truths.get(key(row))!, ...bounds(row) }));
}

const bounds = ({ low80, high80 }: { readonly low80: number; readonly high80: number }) => ({ low80, high80 });

/**
 * How truths move with what was found: 1 where a worth means what it says. Below 1 worths are told too boldly, above 1
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

  it('a worth means what it says: truths move with it one to one', () => {
    expect(Math.abs(truthOnFound(features) - 1)).toBeLessThan(0.05);
    expect(Math.abs(truthOnFound(pegs) - 1)).toBeLessThan(0.05);
  });
});

/** Fits of one kind of log over all venues, with every worth beside its truth. */
class Told {
  readonly rows: Compared[] = [];
  readonly fits: BagTables[] = [];

  add(venue: Venue, truth: Truth): void {
    const tables = rated(venue);
    this.fits.push(tables);
    this.rows.push(...featureMonths(tables, truth, venue), ...pegMonths(tables, truth, venue));
  }

  line(name: string): string {
    return line(name, this.rows, this.fits);
  }
}

describe('with weights hidden', () => {
  const complete = new Told();
  const framesKept = new Told();
  const framesDropped = new Told();
  const bothKept = new Told();
  const bothDropped = new Told();

  beforeAll(() => {
    for (const seed of SEEDS) {
      const whole = simulateFromModel({ seed });
      complete.add(whole.venue, whole.truth);
      const frames = simulateFromModel({ seed, frameOnlyShare: 0.33 });
      framesKept.add(frames.venue, frames.truth);
      framesDropped.add(withoutCensoring(frames.venue), frames.truth);
      const both = simulateFromModel({ seed, frameOnlyShare: 0.33, dnwShare: 0.1 });
      bothKept.add(both.venue, both.truth);
      bothDropped.add(withoutCensoring(both.venue), both.truth);
    }
    const lines = [
      complete.line('nothing hidden'),
      framesKept.line('a third frame-only, as upper bounds'),
      framesDropped.line('a third frame-only, dropped'),
      bothKept.line('and 10% DNW, as upper bounds'),
      bothDropped.line('and 10% DNW, dropped'),
    ];
    console.info(lines.join('\n'));
  });

  it('frame-only events bend no worth where the unlisted stay in as upper bounds, and do where they are dropped', () => {
    const kept = truthOnFound(framesKept.rows);
    expect(Math.abs(kept - 1)).toBeLessThan(0.03);
    expect(truthOnFound(framesDropped.rows)).toBeGreaterThan(kept + 0.015);
    expect(nearness(framesKept.rows).rootMeanSquareError).toBeLessThan(
      nearness(framesDropped.rows).rootMeanSquareError,
    );
  });

  // A DNW is not always below the lower quarter of the event's bags, which is what the bound assumes: worths come out a
  // little nearer to par than they should, by far less than where DNWs are dropped.
  it('DNWs too bend worths far less as upper bounds than dropped', () => {
    const kept = truthOnFound(bothKept.rows) - 1;
    const dropped = truthOnFound(bothDropped.rows) - 1;
    expect(Math.abs(kept)).toBeLessThan(0.07);
    expect(Math.abs(dropped)).toBeGreaterThan(2 * Math.abs(kept));
    expect(nearness(bothKept.rows).rootMeanSquareError).toBeLessThan(nearness(bothDropped.rows).rootMeanSquareError);
  });

  it('80% intervals still hold 76 to 84% of the truths', () => {
    for (const told of [framesKept, bothKept]) {
      const { coverage80 } = nearness(told.rows);
      expect(coverage80).toBeGreaterThanOrEqual(0.76);
      expect(coverage80).toBeLessThanOrEqual(0.84);
    }
  });
});
