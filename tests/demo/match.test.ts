import { expect, test } from 'vitest';
import { makeAtlas } from '../../src/atlas/atlas.ts';
import { matchPage } from '../../src/atlas/match-page.ts';
import { judgePlan, planMatch } from '../../src/atlas/match-plan.ts';
import { NO_RATINGS } from '../../src/atlas/no-ratings.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { surveyVenue } from '../../src/ground/survey-venue.ts';

const { venue } = await loadVenue('content');
const atlas = makeAtlas(venue!, surveyVenue(venue!), NO_RATINGS);
const match = venue!.matches![0]!;

test('the demo’s match keeps its own rules and is far fairer than a random plan', () => {
  const plan = planMatch(atlas, match);
  if ('no' in plan) throw new Error(`no plan: ${plan.no.rule}`);
  const judged = judgePlan(match, plan);
  expect(judged.broken).toEqual([]);
  expect(judged.spread).toBeLessThan(plan.planned.random.middle / 2);
});

test('its page lists every peg once in the walk, keeps pegs out of the bag, and says the limits', () => {
  const page = matchPage(atlas, match, []);
  const planned = match.plan.flatMap(({ pegs }) => pegs);
  expect(page.walk.stops.map(({ key }) => key).sort()).toEqual([...planned].sort());
  expect(page.bag.length).toBe(match.entries - match.kept.length);
  expect(page.kept.map(({ key }) => key)).toEqual(match.kept);
  expect(page.walk.words).toMatch(/^From .* and back, .* on foot/);
  expect(page.bag.some(({ limits }) => limits !== '')).toBe(true);
});
