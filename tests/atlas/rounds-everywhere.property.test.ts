import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeAtlas } from '../../src/atlas/atlas.ts';
import { pegSheet } from '../../src/atlas/peg-sheet.ts';
import { factsOfPeg } from '../../src/atlas/peg-verdicts.ts';
import { safetyPage } from '../../src/atlas/safety-page.ts';
import type { PegFinding, RoundFile } from '../../src/content/round-file/round-file.ts';
import { addDays, type Day } from '../../src/domain/day.ts';
import { pegKey } from '../../src/domain/peg.ts';
import { type PegVerdict, pegVerdict } from '../../src/domain/peg-verdict.ts';
import { surveyVenue } from '../../src/ground/survey-venue.ts';
import { EMPTY_RATINGS } from './example-atlas.ts';
import { ROUND_PEGS, takenIn, WATER, type Walked, walkedRounds } from './verdict/generated-round.ts';
import { contradictions, placesOf } from './verdict/places.ts';

// What is expected is read off the round as it was handed over, not off the verdict: what a bailiff found closes the peg.

const GUIDE_DAY: Day = '2026-11-21';
const READING_DAYS = [0, 1, 4, 12, 40].map((days) => addDays(GUIDE_DAY, days));
const HARD_RULES = ['algae-scum', 'thin-ice', 'unsafe-platform'];

/** Why the round closes a peg on a day, whatever its record said before; null where nothing in it does. */
function closedByRound({ round, keepOpen }: Walked, name: string, onDay: Day): string | null {
  const ofWater = round.places?.find(({ place }) => place === undefined);
  if (ofWater?.closing !== undefined && (ofWater.closing.until ?? onDay) >= onDay) return 'the water was closed';
  if (ofWater?.hazards.some(({ kind }) => HARD_RULES.includes(kind))) return 'a hard rule on the whole water';
  const finding = round.pegs.find(({ peg }) => peg === name);
  if (finding === undefined) return null;
  if (finding.status === 'closed' && (finding.until ?? onDay) >= onDay) return 'the bailiff closed it';
  if (keepOpen.has(pegKey(WATER, name))) return null;
  if (finding.platform?.startsWith('unsafe')) return 'its platform is unsafe';
  const isFound = finding.hazards.some(({ did, kind }) => did === 'found' && HARD_RULES.includes(kind));
  return isFound ? 'a hard rule was found' : null;
}

/** Hard rules somebody tapped "gone" for without saying who decided, and why. */
function clearedByTap({ hazards }: PegFinding): boolean {
  return hazards.some((one) => one.did === 'cleared' && HARD_RULES.includes(one.kind) && one.by === undefined);
}

/** Taken in, put together and shown. Null where what would come out is refused: then nothing is published. */
function published(walked: Walked) {
  const taken = takenIn(walked);
  if (taken === null) return null;
  const atlas = makeAtlas(taken.venue, surveyVenue(taken.venue), EMPTY_RATINGS);
  const pegs = atlas.pegsByWater.get(WATER) ?? [];
  const verdictOf = (name: string, onDay: Day): PegVerdict =>
    pegVerdict(factsOfPeg(atlas, pegs.find(({ peg }) => peg === name)!), onDay);
  return { atlas, pegs, places: placesOf(atlas, WATER), verdictOf };
}

const sheetWords = (atlas: Parameters<typeof pegSheet>[0], name: string) => {
  const { safety, linesWords, standing } = pegSheet(atlas, pegKey(WATER, name));
  return JSON.stringify({ safety, linesWords, standing });
};

function eachRound(check: (walked: Walked, built: NonNullable<ReturnType<typeof published>>) => void): number {
  let built = 0;
  fc.assert(
    fc.property(walkedRounds, (walked) => {
      const guide = published(walked);
      if (guide === null) return;
      built++;
      check(walked, guide);
    }),
    { numRuns: 60 },
  );
  return built;
}

describe('whatever a round found, on whatever day and over whatever records', () => {
  it('closes the peg everywhere, or the folder is refused', () => {
    const reasons = new Set<string>();
    const built = eachRound((walked, { pegs, places, verdictOf }) => {
      expect(pegs.flatMap((peg) => contradictions(places, peg, READING_DAYS))).toEqual([]);
      for (const name of ROUND_PEGS) {
        for (const day of READING_DAYS) {
          const why = closedByRound(walked, name, day);
          if (why === null) continue;
          reasons.add(why);
          expect([name, day, why, verdictOf(name, day).state]).toEqual([name, day, why, 'closed']);
        }
      }
    });
    expect(built).toBeGreaterThan(30);
    expect([...reasons].sort()).toEqual([
      'a hard rule on the whole water',
      'a hard rule was found',
      'its platform is unsafe',
      'the bailiff closed it',
      'the water was closed',
    ]);
  });

  it('opens no peg by a mere tap on a hard rule, and says of one kept open who decided and why', () => {
    let [tapped, kept] = [0, 0];
    eachRound(({ round, keepOpen }, { atlas, verdictOf }) => {
      for (const finding of round.pegs) {
        const verdict = verdictOf(finding.peg, GUIDE_DAY);
        if (keepOpen.has(pegKey(WATER, finding.peg))) {
          if (verdict.state !== 'limited') continue;
          kept++;
          expect(sheetWords(atlas, finding.peg)).toContain('kept open');
          expect(sheetWords(atlas, finding.peg)).toContain('by role Secretary: fished from the bank beside it');
        } else if (clearedByTap(finding)) {
          tapped++;
          expect(verdict.state).toBe('closed');
        }
      }
    });
    expect([tapped > 0, kept > 0]).toEqual([true, true]);
  });

  it('loses nothing that was found, at a peg or at none, and no sheet is silent about lines', () => {
    let found = 0;
    eachRound(({ round }, { atlas, pegs, places }) => {
      const register = JSON.stringify([...places.register.inForce, ...places.register.cleared]);
      for (const { place, hazards } of [
        ...round.pegs.map((each) => ({ ...each, place: 'peg' })),
        ...placesOfRound(round),
      ]) {
        for (const hazard of hazards.filter(({ did }) => did === 'found')) {
          found++;
          expect([place, register.includes(`"kind":"${hazard.kind}","place":"${hazard.place}"`)]).toEqual([
            place,
            true,
          ]);
        }
      }
      for (const { peg } of pegs) {
        const words = pegSheet(atlas, pegKey(WATER, peg)).linesWords;
        expect(words).toContain('surveyed 3 Mar 2026');
        expect(words).toMatch(/Nearest line|No line is on/);
      }
      expect(safetyPage(atlas).hazardCount).toBe(places.register.inForce.length);
    });
    expect(found).toBeGreaterThan(30);
  });
});

function placesOfRound({ places = [] }: RoundFile) {
  return places.map(({ place = 'water', hazards }) => ({ place, hazards }));
}
