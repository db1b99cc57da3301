import type { Plan, PlanProblem } from '../../src/planning/plan-problem.ts';

/**
 * Every plan of a small problem by going through all subsets of its places and all ways to cut each, with none of the code
 * under test: the outside truth of the lattice and of the search.
 */
export function everyPlan(problem: PlanProblem): Plan[] {
  const { places, gapMetres, isRing, entries, sections, apartMetres, stepFree, mostEnds } = problem;
  const size = places.length;
  const along = (from: number, to: number) => {
    let metres = 0;
    for (let at = from; at !== to; at = (at + 1) % size) metres += gapMetres[at]!;
    return metres;
  };
  const found: Plan[] = [];
  for (let subset = 0; subset < 2 ** size; subset++) {
    const chosen = places.map((_, i) => i).filter((i) => (subset >> i) % 2 === 1);
    if (chosen.length !== entries) continue;
    if (chosen.filter((i) => places[i]!.isStepFree).length < stepFree) continue;
    const isApart = chosen.every((i, k) => {
      const next = chosen[k + 1];
      if (next !== undefined) return along(i, next) >= apartMetres;
      return !isRing || chosen.length === 1 || along(i, chosen[0]!) >= apartMetres;
    });
    if (!isApart) continue;
    const seen = new Set<string>();
    for (let turn = 0; turn < (isRing ? entries : 1); turn++) {
      const turned = [...chosen.slice(turn), ...chosen.slice(0, turn)];
      for (const sizes of sizesOf(entries, sections)) {
        let from = 0;
        const plan = sizes.map((length) => {
          from += length;
          return turned.slice(from - length, from);
        });
        if (plan.some((section) => new Set(section.map((i) => places[i]!.group)).size > 1)) continue;
        if (mostEnds !== null && plan.some((section) => section.filter((i) => places[i]!.isEnd).length > mostEnds))
          continue;
        const key = planKey(plan);
        if (seen.has(key)) continue;
        seen.add(key);
        found.push(plan);
      }
    }
  }
  return found;
}

/** One name for a plan whatever section is called the first. */
export function planKey(plan: Plan): string {
  return plan
    .map((section) => [...section].sort((a, b) => a - b).join('.'))
    .sort()
    .join('|');
}

function sizesOf(entries: number, sections: number): number[][] {
  const small = Math.floor(entries / sections);
  const larger = entries % sections;
  return Array.from({ length: 2 ** sections }, (_, bits) =>
    Array.from({ length: sections }, (_, s) => small + ((bits >> s) % 2)),
  ).filter((sizes) => sizes.filter((size) => size > small).length === larger);
}
