import { describe, expect, test } from 'vitest';
import type { Conditions } from '../../../src/domain/session.ts';
import { colourTerm } from '../../../src/ratings/beside/colour-term.ts';
import type { PegGround } from '../../../src/ratings/rated-venue.ts';
import { sessionsInModel } from '../../../src/ratings/sessions-in-model.ts';
import { examplePeg, exampleVenue } from '../../domain/example-venue.ts';
import { exampleEvent, exampleSession } from '../example-log.ts';

const water = exampleVenue({}).waters[0]!.id;
const edge = (metres: number | null): PegGround => ({
  depths: { atMarginMetres: metres, at6Metres: null, at13Metres: null },
});
const GROUND = { [`${water}/1`]: edge(0.3), [`${water}/2`]: edge(1.8), [`${water}/3`]: edge(null) };

/** Three pegs in an event for each of these conditions. */
function offered(conditions: readonly Conditions[], ground: Record<string, PegGround> = GROUND) {
  const names = conditions.map((_, i) => `match-${i}`);
  const venue = {
    ...exampleVenue({
      pegs: ['1', '2', '3'].map((peg) => examplePeg(peg)),
      events: conditions.map((each, i) => ({ ...exampleEvent(names[i]!), conditions: each })),
      sessions: names.flatMap((name) => ['1', '2', '3'].map((peg) => exampleSession(name, peg, 'weighed', 1000))),
    }),
    ground,
  };
  const { sessions } = sessionsInModel(venue, 'total');
  return { offer: colourTerm(venue, sessions), sessions };
}

describe('colourTerm', () => {
  test('says why it cannot be: one colour or none logged, edges not plumbed', () => {
    expect(offered([{}, { waterColour: 'clear' }]).offer).toEqual({ of: 'colour', why: 'one-colour' });
    const two = [{ waterColour: 'clear' }, { waterColour: 'coloured' }] as const;
    expect(offered(two, {}).offer).toEqual({ of: 'colour', why: 'no-margin-plumbed' });
  });

  test('weighs the edge by the colour of the day alone, and knows nothing where either is not told', () => {
    const { offer, sessions } = offered([{ waterColour: 'clear' }, { waterColour: 'coloured' }, {}]);
    if (!('term' in offer)) throw new Error(offer.why);
    const weights = sessions.map((session) => offer.term.weightsOf(session));
    const [clear, coloured] = [weights.slice(0, 3), weights.slice(3, 6)];
    // Two edges a curve's whole length apart lie half of every step on either side of their middle.
    expect(clear[0]).toEqual([-0.5, -0.5, -0.5, -0.5, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect(clear[1]).toEqual([0.5, 0.5, 0.5, 0.5, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect(coloured[1]).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0.5, 0.5, 0.5, 0.5]);
    expect([clear[2], coloured[2], ...weights.slice(6)]).toEqual([null, null, null, null, null]);
  });
});
