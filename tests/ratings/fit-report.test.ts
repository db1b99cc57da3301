import { describe, expect, it } from 'vitest';
import { fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { fitLatentModel } from '../../src/ratings/engine/fit-latent-model.ts';
import type { StopReason } from '../../src/ratings/engine/latent-model.ts';
import { fitReport, unsettledNotes } from '../../src/ratings/fit-report.ts';
import { rateVenue } from '../../src/ratings/rate-venue.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { mixedModel } from './engine/example-models.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

/** Twelve matches in which peg 1 always doubles peg 2. */
const days = Array.from({ length: 12 }, (_, i) => `2026-${String(i + 1).padStart(2, '0')}-05`);
const venue = exampleVenue({
  pegs: [examplePeg('1', { features: ['corner'] }), examplePeg('2')],
  events: days.map((day, i) => exampleEvent(`e${i}`, { day })),
  sessions: days.flatMap((_, i) => [
    exampleSession(`e${i}`, '1', 'weighed', 4000 + 40 * i, { angler: `a-${i % 3}` }),
    exampleSession(`e${i}`, '2', 'weighed', 2000 + 30 * i, { angler: `a-${(i + 1) % 3}` }),
  ]),
});

describe('how a fit ended', () => {
  it('is told of every fit behind the tables, each settled', () => {
    const { fits, notes } = rateVenue(venue, { seed: 1 });
    expect(fits.map(({ of }) => of)).toContain('total');
    expect(fits.every(({ isSettled, steps }) => isSettled && steps > 0)).toBe(true);
    expect(notes.filter((note) => note.about === 'unsettled-fit')).toEqual([]);
  });

  it('makes everything thin where a fit stopped short, and says so', () => {
    const settled = fitBag(venue, 'total');
    const short = fitBag(venue, 'total', {}, { maximumIterations: 1 });
    expect(short.fit.stopped).toBe('iteration limit');
    const words = (bag: typeof short) => new Set(rateBag(venue, bag).pegMonths.map(({ evidence }) => evidence));
    expect([...words(settled)]).not.toEqual(['thin']);
    expect([...words(short)]).toEqual(['thin']);
    expect(unsettledNotes([fitReport('total', settled.fit), fitReport('carp', short.fit)])).toEqual([
      { about: 'unsettled-fit', of: 'carp', stopped: 'iteration limit', steps: 1 },
    ]);
  });

  it.each<[StopReason, boolean]>([
    ['converged', true],
    ['boundary', true],
    ['held', true],
    ['no data', true],
    ['no further gain', false],
    ['iteration limit', false],
  ])('counts "%s" as settled: %s', (stopped, isSettled) => {
    const fit = { ...fitLatentModel(mixedModel()), stopped };
    expect(fitReport('total', fit).isSettled).toBe(isSettled);
  });
});
