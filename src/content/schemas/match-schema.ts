import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import { type EndRule, type Match, type MatchSection, type Scoring, USUAL_SCORING } from '../../domain/match.ts';
import { choice, day, matching, number, text, wholeNumber, word, yesNo } from './fields.ts';
import { length } from './measures.ts';
import { withoutUndefined } from './without-undefined.ts';

/** More than any stillwater holds: a slip of the pen. */
const MAX_ENTRIES = 500;
const MAX_SECTIONS = 60;

const clockTime = (what: string) =>
  matching(/^(?:[01]\d|2[0-3]):[0-5]\d$/, 'clock-time', `${what}, such as 10:00`, 'Write hours and minutes: 09:30.');

const pegs = (what: string) =>
  z.array(
    matching(
      /^[a-z][a-z0-9-]*\/[A-Za-z0-9-]+$/,
      'peg-key',
      'a peg with its water: kiln-pool/23',
      'Write water, a stroke and the peg.',
    ),
    { error: `${what}, such as [kiln-pool/23]` },
  );

const endsSchema = (units: Units) =>
  z
    .strictObject({
      rule: choice(['any', 'one-a-section', 'left-out']),
      features: z.array(word('a feature of venue.md'), { error: 'a list such as [corner]' }).exactOptional(),
      gap: length(units, 'how far along the bank the next peg on one hand has to be').exactOptional(),
    })
    .transform(({ gap: gapMetres, features, ...rest }) =>
      withoutUndefined({ ...rest, features: features ?? [], gapMetres }),
    ) satisfies z.ZodType<EndRule>;

const scoringSchema = z
  .strictObject({
    overall: choice(['weight', 'points']).exactOptional(),
    points: choice(['low', 'high']).exactOptional(),
    ties: choice(['share', 'same']).exactOptional(),
    'no-weight': choice(['share', 'last']).exactOptional(),
  })
  .transform(({ overall, points, ties, 'no-weight': noWeight }) => ({
    overall: overall ?? USUAL_SCORING.overall,
    count: points ?? USUAL_SCORING.count,
    ties: ties ?? USUAL_SCORING.ties,
    noWeight: noWeight ?? USUAL_SCORING.noWeight,
  })) satisfies z.ZodType<Scoring>;

const planSchema = z
  .record(z.string().regex(/^[A-Z]{1,2}$/, { error: 'sections named by capital letters: A, B, C' }), pegs('its pegs'), {
    error: 'sections with their pegs: { A: [kiln-pool/1, kiln-pool/2] }',
  })
  .transform((sections): readonly MatchSection[] =>
    Object.entries(sections).map(([name, own]) => ({ name, pegs: own })),
  );

/** The front matter of `matches/<date>-<slug>.md`. */
export const matchSchema = (units: Units) =>
  z
    .strictObject({
      name: text('the name of the match'),
      date: day('the day it is fished'),
      waters: z.array(word('a water'), { error: 'a list such as [kiln-pool]' }).min(1, { error: 'at least one water' }),
      entries: wholeNumber('how many fish it', 2, MAX_ENTRIES),
      sections: wholeNumber('how many sections', 1, MAX_SECTIONS).exactOptional(),
      apart: length(units, 'least distance between two pegs along the bank').exactOptional(),
      'step-free': wholeNumber('entries that need a peg free of steps', 0, MAX_ENTRIES).exactOptional(),
      ends: endsSchema(units).exactOptional(),
      'leave-out': pegs('pegs that are not to go in').exactOptional(),
      places: wholeNumber('how many places frame', 1, MAX_ENTRIES).exactOptional(),
      scoring: scoringSchema.exactOptional(),
      pot: z
        .array(number('a part of the pot', 0, 1_000_000), {
          error: 'parts of the pot, the winner’s first: [50, 30, 20]',
        })
        .exactOptional(),
      'names-agreed': yesNo('true where the members agreed to stand on printed results by name').exactOptional(),
      draw: clockTime('when the draw is').exactOptional(),
      'all-in': clockTime('when fishing begins').exactOptional(),
      'all-out': clockTime('when fishing ends').exactOptional(),
      status: choice(['planned', 'fished']).exactOptional(),
      pegs: planSchema.exactOptional(),
      kept: pegs('pegs kept for those who need one free of steps').exactOptional(),
    })
    .transform((fields) =>
      withoutUndefined({
        name: fields.name,
        day: fields.date,
        waters: fields.waters,
        entries: fields.entries,
        sections: fields.sections ?? 1,
        apartMetres: fields.apart ?? 0,
        stepFree: fields['step-free'] ?? 0,
        ends: fields.ends ?? { rule: 'any' as const, features: [] },
        leaveOut: fields['leave-out'] ?? [],
        // Common practice, no source: one place in five frames where the club does not say.
        places: fields.places ?? Math.max(1, Math.round(fields.entries / 5)),
        scoring: fields.scoring ?? USUAL_SCORING,
        pot: fields.pot ?? [],
        namesAgreed: fields['names-agreed'] ?? false,
        draw: fields.draw,
        allIn: fields['all-in'],
        allOut: fields['all-out'],
        status: fields.status ?? 'planned',
        plan: fields.pegs ?? [],
        kept: fields.kept ?? [],
      }),
    ) satisfies z.ZodType<Omit<Match, 'id' | 'markdown'>>;
