import { expect, test } from 'vitest';
import { makeAtlas } from '../../src/atlas/atlas.ts';
import { judgePlan, planMatch } from '../../src/atlas/match-plan.ts';
import { mendPlan } from '../../src/atlas/mend-plan.ts';
import { NO_RATINGS } from '../../src/atlas/no-ratings.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import type { Match } from '../../src/domain/match.ts';
import type { PegKey } from '../../src/domain/peg.ts';
import { surveyVenue } from '../../src/ground/survey-venue.ts';

const { venue } = await loadVenue('content');
const match = venue!.matches![0]!;
const SURVEY = surveyVenue(venue!);

/** The demo's own match when some of its pegs have closed since. */
function whenClosed(...closed: readonly PegKey[]) {
  const pegs = venue!.pegs.map((peg) =>
    closed.includes(`${peg.water}/${peg.peg}`) ? { ...peg, status: 'closed' as const } : peg,
  );
  const atlas = makeAtlas({ ...venue!, pegs }, SURVEY, NO_RATINGS);
  const plan = planMatch(atlas, match);
  if ('no' in plan) throw new Error(`No plan keeps the rules without ${closed.join(', ')}.`);
  return { plan, mended: mendPlan(atlas, match, plan) };
}

const pegsOf = (plan: Match['plan']) => plan.flatMap(({ pegs }) => pegs);

test('puts one peg in the place of a closed one, moves no other, and keeps every rule', () => {
  const { plan, mended } = whenClosed('kiln-pool/20');
  expect(mended).toMatchObject({
    out: [{ peg: 'kiln-pool/20', section: 'A' }],
    in: [{ section: 'A' }],
    moved: [],
    kept: match.kept,
  });
  expect(judgePlan({ ...match, plan: mended!.sections }, plan).broken).toEqual([]);
  // Of all single pegs that could stand there none gives nearer sections.
  const inPlan = new Set(pegsOf(match.plan));
  for (const { water, peg } of plan.problem.pegs) {
    const key = `${water}/${peg}`;
    if (inPlan.has(key)) continue;
    const other = match.plan.map(({ name, pegs }) => ({
      name,
      pegs: pegs.map((each) => (each === 'kiln-pool/20' ? key : each)),
    }));
    const judged = judgePlan({ ...match, plan: other }, plan);
    if (judged.broken.length === 0) expect(judged.spread).toBeGreaterThanOrEqual(mended!.spread - 1e-9);
  }
});

test('keeps every peg that is still open in, whichever close, and tells whose section changes', () => {
  let mendedOnes = 0;
  for (const closed of [
    ...pegsOf(match.plan)
      .filter((_, i) => i % 4 === 2)
      .map((peg) => [peg]),
    ['kiln-pool/20', 'kiln-pool/10'],
  ]) {
    const { plan, mended } = whenClosed(...closed);
    if (mended === null) continue;
    mendedOnes++;
    const after = pegsOf(mended.sections);
    expect(pegsOf(match.plan).filter((peg) => !after.includes(peg))).toEqual(
      pegsOf(match.plan).filter((peg) => closed.includes(peg)),
    );
    expect(judgePlan({ ...match, plan: mended.sections }, plan).broken, closed.join()).toEqual([]);
    expect(mended.kept).toHaveLength(match.stepFree);
    expect(mended.kept.every((peg) => after.includes(peg))).toBe(true);
    const sectionOf = (sections: Match['plan'], peg: PegKey) => sections.find(({ pegs }) => pegs.includes(peg))?.name;
    expect(mended.moved.map(({ peg }) => peg).sort()).toEqual(
      after
        .filter((peg) => sectionOf(match.plan, peg) !== undefined)
        .filter((peg) => sectionOf(match.plan, peg) !== sectionOf(mended.sections, peg))
        .sort(),
    );
  }
  expect(mendedOnes).toBeGreaterThan(4);
});

test('has nothing to do where nothing closed', () => {
  expect(whenClosed().mended).toBeNull();
});
