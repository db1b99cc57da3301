import { parseArgs } from 'node:util';
import type { BlankMeaning, Session } from '../../src/domain/session.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { firstLook } from '../../src/ratings/first-look.ts';
import { seededChance } from '../demo/chance.ts';
import { demoVenue } from '../demo/demo-venue.ts';
import { type Truth, truePegMonths } from '../demo/log/truth.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

/**
 * `npm run coverage:blanks -- [--venues 6]`: what a nought on a sheet should be read as. Every DNW of the demo venue and of simulated
 * ones is logged as a nought, with and without one other bag in thirty whose weight was lost as a nought too; each reading is held
 * against what the log was drawn from: the residual, the error of the peg worth, and how many of them the intervals hold.
 */
const { values } = parseArgs({ options: { venues: { type: 'string', default: '6' } } });

const READINGS: readonly { readonly name: string; readonly read: (venue: Venue) => Venue }[] = [
  { name: 'did not weigh', read: (venue) => meaning(venue, 'dnw') },
  { name: 'nothing caught', read: (venue) => meaning(venue, 'nothing') },
  {
    name: 'not logged',
    read: (venue) => ({ ...venue, sessions: venue.sessions.filter(({ status }) => status !== 'blank') }),
  },
];
const LOST = 1 / 30;

for (const lost of [0, LOST]) {
  console.log(`\n${lost === 0 ? 'noughts are DNWs alone' : 'and one other bag in thirty is a nought'}`);
  for (const { name, venues } of [
    { name: 'demo venue', venues: [demoVenue()] },
    {
      name: `${values.venues} simulated venues`,
      venues: Array.from({ length: Number(values.venues) }, (_, i) =>
        simulateFromModel({ seed: i + 1, dnwShare: 0.08 }),
      ),
    },
  ]) {
    for (const reading of READINGS) {
      const told = venues.map(({ venue, truth }) => heldAgainst(reading.read(noughts(venue, lost)), truth));
      const mean = (of: (each: (typeof told)[number]) => number) =>
        told.reduce((sum, each) => sum + of(each), 0) / told.length;
      console.log(
        `  ${name.padEnd(20)} ${reading.name.padEnd(15)} residual ${mean((t) => t.residual).toFixed(3)} of ${mean((t) => t.truth).toFixed(3)}   error of pegs ${mean((t) => t.error).toFixed(4)}   80% intervals hold ${(100 * mean((t) => t.held)).toFixed(1)}%`,
      );
    }
  }
}

function meaning(venue: Venue, blankMeans: BlankMeaning): Venue {
  const ratingRules = { ...venue.settings.ratingRules, blankMeans };
  const events = venue.events.map(({ blankMeans: _, ...event }) => event);
  return { ...venue, events, settings: { ...venue.settings, ratingRules } };
}

/** The log with every DNW as a nought, and some weighed bags as well. */
function noughts(venue: Venue, lost: number): Venue {
  const chance = seededChance(30);
  const sessions = venue.sessions.map((session): Session => {
    const isLost = session.status === 'weighed' && chance.happens(lost);
    if (session.status !== 'dnw' && !isLost) return session;
    const { weightGrams: _, ...rest } = session;
    return { ...rest, status: 'blank', parts: {} };
  });
  return { ...venue, sessions };
}

function heldAgainst(venue: Venue, truth: Truth) {
  const { lesson, asked, start } = firstLook(venue);
  const choice = { dnw: lesson.mechanism ?? undefined, asked };
  const { fitted, pegMonths } = rateBag(venue, fitBag(venue, 'total', choice, start === null ? {} : { start }));
  const truths = new Map(
    truePegMonths(truth, venue.pegs).map((row) => [`${row.water}/${row.peg} ${row.month}`, row.logWorth]),
  );
  let [squares, held] = [0, 0];
  for (const { water, peg, month, logWorth, low80, high80 } of pegMonths) {
    const value = truths.get(`${water}/${peg} ${month}`)!;
    squares += (logWorth - value) ** 2;
    held += Math.exp(value) >= low80 && Math.exp(value) <= high80 ? 1 : 0;
  }
  return {
    residual: fitted.fit.residualSd,
    truth: truth.residualSd,
    error: Math.sqrt(squares / pegMonths.length),
    held: held / pegMonths.length,
  };
}
