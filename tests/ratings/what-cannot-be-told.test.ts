import { describe, expect, test } from 'vitest';
import { ratingsNoteWords } from '../../src/atlas/ratings-words.ts';
import { sessionsInModel } from '../../src/ratings/sessions-in-model.ts';
import { whatCannotBeTold } from '../../src/ratings/what-cannot-be-told.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

const features = [
  { id: 'corner', name: 'Corner' },
  { id: 'reeds', name: 'Reeds' },
  { id: 'inlet', name: 'Inlet' },
];
const venue = exampleVenue({
  settings: { ...EXAMPLE_SETTINGS, features },
  pegs: [examplePeg('1', { features: ['corner'] }), examplePeg('2'), examplePeg('3')],
  events: [exampleEvent('a'), exampleEvent('b', { day: '2026-01-10' })],
  sessions: [
    exampleSession('a', '1', 'weighed', 1000, { angler: 'a-1' }),
    exampleSession('b', '2', 'weighed', 1000, { angler: 'a-2' }),
  ],
});
const told = (changes: Partial<typeof venue>) => {
  const changed = { ...venue, ...changes };
  return whatCannotBeTold(changed, sessionsInModel(changed, 'total').sessions).map(ratingsNoteWords);
};

describe('whatCannotBeTold', () => {
  test('names a feature that stands on every peg of a water', () => {
    const pegs = venue.pegs.map((peg) => ({ ...peg, features: ['corner'] }));
    expect(told({ pegs })).toContain(
      'Every peg of The Pit has the feature “Corner”: it is part of par there, and that water tells nothing of its worth.',
    );
  });

  test('names features that stand on the very same pegs', () => {
    const pegs = venue.pegs.map((peg, i) => (i === 0 ? { ...peg, features: ['corner', 'reeds'] } : peg));
    expect(told({ pegs })).toContain(
      '“Corner” and “Reeds” stand on the very same pegs: what they are worth rests on the same bags and cannot be told apart.',
    );
  });

  test('calls a feature untold on neither ground where its days tell it', () => {
    const everywhere = venue.pegs.map((peg, i) => ({
      ...peg,
      features: ['corner'],
      datedFeatures: [i === 0 ? { id: 'corner' } : { id: 'corner', from: '2026-03-01' }],
    }));
    expect(told({ pegs: everywhere }).join()).not.toContain('Every peg');
    const cut = venue.pegs.map((peg, i) => ({
      ...peg,
      features: i === 0 ? ['corner', 'reeds'] : [],
      datedFeatures: i === 0 ? [{ id: 'corner' }, { id: 'reeds' }] : [{ id: 'reeds', until: '2026-03-01' }],
    }));
    expect(told({ pegs: cut }).join()).not.toContain('the very same pegs');
  });

  test('names features that no peg has', () => {
    expect(told({})).toContain('No peg has the feature “Reeds”: it has no worth.');
    // Two that stand nowhere do not stand on the very same pegs.
    expect(told({}).join()).not.toContain('the very same pegs');
  });

  test('names months never fished and pegs never drawn', () => {
    const notes = told({});
    expect(notes).toContainEqual(
      expect.stringMatching(/^The Pit was never fished in February, March, .* and December:/),
    );
    expect(notes).toContainEqual(expect.stringMatching(/^Peg 3 of The Pit never stood in a draw that counts/));
  });

  test('says where there is one event, one angler, no bag or no session', () => {
    expect(told({ sessions: venue.sessions.slice(0, 1) })).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^All sessions are of one event/),
        expect.stringMatching(/^All sessions are by one angler/),
      ]),
    );
    expect(told({ sessions: [exampleSession('a', '1', 'blank')] })[0]).toMatch(/^The log holds no session/);
    expect(told({ sessions: [] })[0]).toMatch(/^The log holds no session that counts/);
  });
});
