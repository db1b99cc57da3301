import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeAtlas } from '../../src/atlas/atlas.ts';
import { matchProblem } from '../../src/atlas/match-problem.ts';
import { NO_RATINGS } from '../../src/atlas/no-ratings.ts';
import { factsOfPeg } from '../../src/atlas/peg-verdicts.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import type { Match } from '../../src/domain/match.ts';
import { pegKey } from '../../src/domain/peg.ts';
import { pegVerdict } from '../../src/domain/peg-verdict.ts';
import { surveyVenue } from '../../src/ground/survey-venue.ts';
import { exampleMatch } from '../domain/example-match.ts';
import { READING_DAYS, venues } from './verdict/generated-venue.ts';

const MATCH = exampleMatch();

describe('which pegs may go into a match', () => {
  test('are just those that the verdict of its day does not close, whatever closes them', () => {
    let closed = 0;
    fc.assert(
      fc.property(venues, fc.constantFrom(...READING_DAYS), (venue, day) => {
        const atlas = makeAtlas(venue, surveyVenue(venue), NO_RATINGS);
        const { pegs, notIn, problem } = matchProblem(atlas, { ...MATCH, day });
        const open = venue.pegs.filter((peg) => pegVerdict(factsOfPeg(atlas, peg), day).state !== 'closed');
        const keys = (all: typeof venue.pegs) => all.map(({ water, peg }) => pegKey(water, peg)).sort();
        expect(keys(pegs)).toEqual(keys(open));
        expect(problem.places).toHaveLength(open.length);
        expect(notIn.filter(({ by }) => by === 'closed')).toHaveLength(venue.pegs.length - open.length);
        closed += notIn.length;
      }),
      { numRuns: 60 },
    );
    expect(closed).toBeGreaterThan(20);
  });
});

describe('the club’s rules on a real bank', async () => {
  const { venue } = await loadVenue('content');
  const atlas = makeAtlas(venue!, surveyVenue(venue!), NO_RATINGS);
  const kiln: Match = { ...MATCH, waters: ['kiln-pool'], entries: 20 };
  const all = matchProblem(atlas, kiln);

  test('end pegs by feature are left out, or marked so that a section holds one', () => {
    const ends = { features: ['corner'] } as const;
    const out = matchProblem(atlas, { ...kiln, ends: { ...ends, rule: 'left-out' } });
    const corners = all.pegs.filter(({ features }) => features.includes('corner'));
    expect(corners.length).toBeGreaterThan(1);
    expect(out.pegs).toHaveLength(all.pegs.length - corners.length);
    expect(out.notIn.filter(({ by }) => by === 'end').map(({ why }) => why)).toContain('corner');
    const marked = matchProblem(atlas, { ...kiln, ends: { ...ends, rule: 'one-a-section' } });
    expect(marked.problem.mostEnds).toBe(1);
    expect(marked.problem.places.filter(({ isEnd }) => isEnd)).toHaveLength(corners.length);
  });

  test('a peg with nobody near on one hand is an end peg where the club says how far', () => {
    const { problem } = matchProblem(atlas, { ...kiln, ends: { rule: 'one-a-section', features: [], gapMetres: 100 } });
    // The closed pegs under the line leave one wide gap, with a peg on either side of it.
    expect(problem.places.filter(({ isEnd }) => isEnd)).toHaveLength(2);
  });

  test('a bank ends at a stretch without pegs, and two waters never share a section', () => {
    expect(all.problem.isRing).toBe(false);
    const both = matchProblem(atlas, { ...kiln, waters: ['kiln-pool', 'eelback'] });
    const groups = both.problem.places.map(({ group }) => group);
    expect(groups).toEqual([...groups].sort());
    expect(new Set(groups).size).toBe(2);
    expect(both.problem.gapMetres[groups.indexOf(1) - 1]).toBe(Number.POSITIVE_INFINITY);
  });

  test('gaps along the bank are no shorter than the straight way between the pegs', () => {
    const { pegs, problem } = all;
    for (let i = 0; i + 1 < pegs.length; i++) {
      const [a, b] = [pegs[i]!.at, pegs[i + 1]!.at];
      const straight = Math.hypot(
        (a.lat - b.lat) * 111_200,
        (a.lng - b.lng) * 111_200 * Math.cos((a.lat * Math.PI) / 180),
      );
      // A platform stands up to a few metres off the bank's line.
      expect(problem.gapMetres[i]!).toBeGreaterThan(straight - 8);
    }
  });

  test('what the organiser leaves out does not go in, and is told', () => {
    const [peg] = all.pegs;
    const key = pegKey(peg!.water, peg!.peg);
    const out = matchProblem(atlas, { ...kiln, leaveOut: [key] });
    expect(out.pegs).not.toContain(peg);
    expect(out.notIn).toContainEqual({ peg: key, by: 'left-out', why: 'the organiser leaves it out' });
  });
});
