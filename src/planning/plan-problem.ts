/**
 * A question of planning in numbers only: which places of a bank go in, and where the sections are cut. Places stand in
 * their order along the bank; a plan takes some of them and cuts them into sections that follow one another.
 */
export interface PlanProblem {
  readonly places: readonly PlanPlace[];
  /** Along the bank from each place to the next; of the last, to the first where the bank is a ring. */
  readonly gapMetres: readonly number[];
  /** The last place is followed by the first, so that a section may run over the end of the list. */
  readonly isRing: boolean;
  readonly entries: number;
  readonly sections: number;
  /** Least distance along the bank between two places that go in. */
  readonly apartMetres: number;
  /** At least so many of those that go in are free of steps. */
  readonly stepFree: number;
  /** At most so many end places in one section; null for any number. */
  readonly mostEnds: number | null;
}

/** One place that may go in. */
export interface PlanPlace {
  /** No section runs over two groups: they are different waters. Places of a group follow one another. */
  readonly group: number;
  readonly isStepFree: boolean;
  /** Counts against `mostEnds`. */
  readonly isEnd: boolean;
}

/** Sections in their order along the bank; each holds the numbers of its places in theirs. */
export type Plan = readonly (readonly number[])[];

/** Sizes of sections: the smaller, and how many are larger by one. */
export function sectionSizes({ entries, sections }: Pick<PlanProblem, 'entries' | 'sections'>): {
  readonly small: number;
  readonly larger: number;
} {
  return { small: Math.floor(entries / sections), larger: entries % sections };
}

/** Whether a plan keeps every rule of its problem, whoever made it. */
export function keepsRules(problem: PlanProblem, plan: Plan): boolean {
  const { places, entries, sections, stepFree, mostEnds } = problem;
  const { small, larger } = sectionSizes(problem);
  const chosen = plan.flat();
  if (chosen.some((place) => places[place] === undefined)) return false;
  if (plan.length !== sections || chosen.length !== entries || new Set(chosen).size !== entries) return false;
  if (plan.some(({ length }) => length !== small && length !== small + 1)) return false;
  if (plan.filter(({ length }) => length === small + 1).length !== larger) return false;
  if (plan.some((section) => new Set(section.map((place) => places[place]!.group)).size > 1)) return false;
  if (chosen.filter((place) => places[place]!.isStepFree).length < stepFree) return false;
  if (mostEnds !== null && plan.some((section) => endsIn(problem, section) > mostEnds)) return false;
  return followsBank(problem, chosen) && isApart(problem, chosen);
}

/** How many end places a section holds. */
function endsIn({ places }: PlanProblem, section: readonly number[]): number {
  return section.filter((place) => places[place]!.isEnd).length;
}

/** Whether places stand in their order along the bank: ascending, with one turn over the end of a ring. */
function followsBank({ isRing }: PlanProblem, chosen: readonly number[]): boolean {
  const falls = chosen.filter((place, i) => i > 0 && place < chosen[i - 1]!).length;
  if (falls === 0) return true;
  return isRing && falls === 1 && chosen.at(-1)! < chosen[0]!;
}

function isApart(problem: PlanProblem, chosen: readonly number[]): boolean {
  const { apartMetres, isRing } = problem;
  const start = bankStarts(problem);
  const ring = start.at(-1)!;
  return chosen.every((place, i) => {
    const isLast = i === chosen.length - 1;
    if (isLast && (!isRing || chosen.length === 1)) return true;
    const next = chosen[isLast ? 0 : i + 1]!;
    const metres = start[next]! - start[place]!;
    return (next > place ? metres : metres + ring) >= apartMetres;
  });
}

/** Metres along the bank to each place from the first, and last the length of the whole. */
export function bankStarts({ gapMetres }: Pick<PlanProblem, 'gapMetres'>): readonly number[] {
  const starts = [0];
  // An end of the bank lies farther than any distance asked for, and sums must stay finite.
  for (const gap of gapMetres) starts.push(starts.at(-1)! + Math.min(gap, FAR_METRES));
  return starts;
}

const FAR_METRES = 1e6;
