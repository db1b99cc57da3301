import { describe, expect, test } from 'vitest';
import type { Venue } from '../../src/domain/venue.ts';
import type { RandomTerm } from '../../src/ratings/engine/latent-model.ts';
import { ratingModel } from '../../src/ratings/rating-model.ts';
import { sessionsInModel } from '../../src/ratings/sessions-in-model.ts';
import { MONTH_SEASON } from '../../src/ratings/temperature-season.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

const features = ['corner', 'reeds'].map((id) => ({ id, name: id }));
const venue = exampleVenue({
  settings: { ...EXAMPLE_SETTINGS, features },
  pegs: [
    examplePeg('1', { features: ['corner', 'reeds'] }),
    examplePeg('2', { features: ['reeds'] }),
    examplePeg('3', { features: ['reeds'] }),
  ],
  events: [exampleEvent('a', { day: '2026-01-10' }), exampleEvent('b', { day: '2026-08-10', blankMeans: 'nothing' })],
  sessions: [
    exampleSession('a', '1', 'weighed', 2000, { angler: 'a-1' }),
    exampleSession('a', '2', 'weighed', 1000),
    exampleSession('b', '1', 'blank', undefined, { angler: 'a-1' }),
  ],
});

function modelOf(of: Venue) {
  return ratingModel(of, sessionsInModel(of, 'total').sessions, MONTH_SEASON);
}

/** Columns that a term puts weight on, row by row. */
function columnsOf(terms: readonly RandomTerm[], name: string): number[][] | undefined {
  const term = terms.find((each) => each.name === name);
  if (term === undefined) return undefined;
  const { rowStart, column } = term.rows;
  return Array.from({ length: rowStart.length - 1 }, (_, i) => [...column.slice(rowStart[i], rowStart[i + 1])]);
}

describe('ratingModel', () => {
  const { latent, featureColumns } = modelOf(venue);

  test('observes weighed bags and bounds the others from above', () => {
    expect([...latent.observations.upper]).toEqual([Math.log(2), 0, 0]);
    expect([...latent.observations.lower]).toEqual([Math.log(2), 0, Number.NEGATIVE_INFINITY]);
  });

  test('gives every session its event and peg, and its angler where known', () => {
    expect(columnsOf(latent.terms, 'event')).toEqual([[0], [0], [1]]);
    expect(columnsOf(latent.terms, 'peg')).toEqual([[0], [1], [0]]);
    expect(columnsOf(latent.terms, 'angler')).toEqual([[0], [], [0]]);
  });

  test('gives a feature its level and its month, a cyclic walk', () => {
    expect(columnsOf(latent.terms, 'feature')).toEqual([[0], [], [0]]);
    expect(columnsOf(latent.terms, 'featureMonth')).toEqual([[0], [], [7]]);
    expect(latent.terms.find(({ name }) => name === 'featureMonth')?.prior).toEqual({
      kind: 'cyclic-walk',
      positions: 12,
    });
  });

  test('leaves out a feature that stands on every peg of its waters', () => {
    expect([...featureColumns.keys()]).toEqual(['corner']);
  });

  test('leaves a feature out where it is part of par, and keeps it where it is not', () => {
    const waters = [...venue.waters, { ...venue.waters[0]!, id: 'lake', name: 'Lake' }];
    const pegs = [
      ...venue.pegs,
      examplePeg('1', { water: 'lake', features: ['reeds'] }),
      examplePeg('2', { water: 'lake', features: [] }),
    ];
    const events = [...venue.events, exampleEvent('c', { day: '2026-09-01', water: 'lake' })];
    const sessions = [...venue.sessions, exampleSession('c', '1', 'weighed', 500, { water: 'lake' })];
    const model = modelOf({ ...venue, waters, pegs, events, sessions });
    expect([...model.featureColumns.keys()]).toEqual(['corner', 'reeds']);
    expect(columnsOf(model.latent.terms, 'feature')).toEqual([[0], [], [0], [1]]);
  });

  test('tells days apart by water and season, but has no term for a lone water', () => {
    expect(columnsOf(latent.terms, 'water')).toBeUndefined();
    expect(columnsOf(latent.terms, 'waterMonth')).toEqual([[0], [0], [7]]);
  });

  test('has no term that nothing stands for', () => {
    const bare = modelOf({
      ...venue,
      pegs: venue.pegs.map((peg) => ({ ...peg, features: [] })),
      sessions: venue.sessions.slice(1, 2),
    });
    expect(bare.latent.terms.map(({ name }) => name)).toEqual(['event', 'waterMonth', 'venueWave', 'peg']);
  });
});
