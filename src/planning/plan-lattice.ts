import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { bankStarts, type Plan, type PlanProblem, sectionSizes } from './plan-problem.ts';

/** What a place costs in a section: the section's number, and whether it is one of the larger. */
export type PlaceCost = (place: number, section: number, isLarger: boolean) => number;

/**
 * All plans that keep the rules, as paths through one lattice: along the bank each place is taken or left, and what the
 * rules need to know of the places before it (sections closed, places in the open one, larger ones begun, step-free places,
 * ends in it) is one state. So plans can be counted, drawn fairly, listed, and the cheapest found exactly when costs add up,
 * by dynamic programming (Bellman, Dynamic Programming, 1957), without looking at each.
 *
 * On a ring every plan is met once: from the section whose first place comes first in the list.
 */
export class PlanLattice {
  /** Places at which a walk along the bank may begin: all of a ring, else only the first (which need not be taken). */
  readonly starts: readonly number[];
  readonly #problem: PlanProblem;
  readonly #small: number;
  readonly #larger: number;
  readonly #phases: number;
  readonly #shape: { readonly sections: number; readonly free: number; readonly ends: number; readonly size: number };
  readonly #along: readonly number[];

  constructor(problem: PlanProblem) {
    this.#problem = problem;
    const { small, larger } = sectionSizes(problem);
    this.#small = small;
    this.#larger = larger;
    this.#phases = larger === 0 ? small : 2 * small;
    const free = problem.stepFree + 1;
    const ends = problem.mostEnds === null ? 1 : problem.mostEnds + 1;
    const size = (problem.sections + 1) * this.#phases * (larger + 1) * free * ends;
    this.#shape = { sections: problem.sections, free, ends, size };
    this.#along = bankStarts(problem);
    this.starts = problem.isRing ? problem.places.map((_, i) => i) : problem.places.length > 0 ? [0] : [];
  }

  /** How many plans there are; a float, exact up to 2⁵³. */
  count(): number {
    return this.starts.reduce((sum, start) => sum + this.#counts(start)[0]!, 0);
  }

  /** So many plans drawn at random, each plan as likely as any other. */
  draw(plans: number, random: RandomGenerator): Plan[] {
    const weights = this.starts.map((start) => this.#counts(start)[0]!);
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    if (total === 0) return [];
    const from = Array.from({ length: plans }, () => pick(weights, uniformFloat64(random) * total));
    const drawn: Plan[] = new Array(plans);
    // Start by start: the table of one is as large as memory needs to hold.
    for (const index of new Set(from)) {
      const start = this.starts[index]!;
      const table = this.#counts(start);
      from.forEach((own, i) => {
        if (own === index)
          drawn[i] = this.#walk(start, (options) => pick(options, uniformFloat64(random) * sum(options)), table);
      });
    }
    return drawn;
  }

  /** Every plan. Ask `count` first. */
  *all(): Generator<Plan> {
    for (const start of this.starts) yield* this.#list(start, this.#counts(start));
  }

  /** The cheapest plan that begins at a start; null where none does. */
  cheapest(start: number, cost: PlaceCost): { readonly cost: number; readonly plan: Plan } | null {
    const table = this.#fold(start, Number.POSITIVE_INFINITY, Math.min, cost);
    if (!Number.isFinite(table[0]!)) return null;
    const least = (options: readonly number[]) => options.indexOf(Math.min(...options));
    return { cost: table[0]!, plan: this.#walk(start, least, table, cost) };
  }

  #counts(start: number): Float64Array {
    const known = this.#lastCounts;
    if (known?.start === start) return known.table;
    const table = this.#fold(start, 0, (a, b) => a + b, null);
    this.#lastCounts = { start, table };
    return table;
  }
  #lastCounts: { readonly start: number; readonly table: Float64Array } | null = null;

  /** Values of every state before every position, from the end backwards. */
  #fold(start: number, none: number, join: (a: number, b: number) => number, cost: PlaceCost | null): Float64Array {
    const { size } = this.#shape;
    const { length } = this.#problem.places;
    const table = new Float64Array((length + 1) * size).fill(none);
    table[length * size + this.#final()] = cost === null ? 1 : 0;
    for (let position = length - 1; position >= 0; position--) {
      const isForced = this.#problem.isRing && position === 0;
      for (let state = 0; state < size; state++) {
        if (position === 0 && state > 0) break;
        if (!this.#isReached(position, state)) continue;
        let value =
          isForced || !this.#mayGoOn(start, position, position + 1, state)
            ? none
            : table[(position + 1) * size + state]!;
        for (const step of this.#steps(start, position, state)) {
          const onward = table[step.position * size + step.state]!;
          value = join(
            value,
            cost === null ? onward : onward + cost(this.#placeAt(start, position), step.section, step.isLarger),
          );
        }
        table[position * size + state] = value;
      }
    }
    return table;
  }

  /** One plan through a table of values; `choose` picks among the values of leaving a place and of each way to take it. */
  #walk(
    start: number,
    choose: (options: readonly number[]) => number,
    table: Float64Array,
    cost: PlaceCost | null = null,
  ): Plan {
    const { size } = this.#shape;
    const { length } = this.#problem.places;
    const none = cost === null ? 0 : Number.POSITIVE_INFINITY;
    const plan: number[][] = [];
    let position = 0;
    let state = 0;
    while (position < length) {
      const isForced = this.#problem.isRing && position === 0;
      const place = this.#placeAt(start, position);
      const steps = this.#steps(start, position, state);
      const left =
        isForced || !this.#mayGoOn(start, position, position + 1, state) ? none : table[(position + 1) * size + state]!;
      const values = steps.map((step) => {
        const onward = table[step.position * size + step.state]!;
        return cost === null ? onward : onward + cost(place, step.section, step.isLarger);
      });
      const chosen = choose([left, ...values]);
      const step = steps[chosen - 1];
      if (step === undefined) position++;
      else {
        const section = plan[step.section] ?? [];
        plan[step.section] = section;
        section.push(place);
        ({ position, state } = step);
      }
    }
    return plan;
  }

  *#list(
    start: number,
    table: Float64Array,
    position = 0,
    state = 0,
    taken: readonly (readonly number[])[] = [],
  ): Generator<Plan> {
    const { size } = this.#shape;
    if (position === this.#problem.places.length) {
      if (state === this.#final()) yield taken;
      return;
    }
    const isForced = this.#problem.isRing && position === 0;
    if (!isForced && this.#mayGoOn(start, position, position + 1, state) && table[(position + 1) * size + state]! > 0) {
      yield* this.#list(start, table, position + 1, state, taken);
    }
    for (const step of this.#steps(start, position, state)) {
      if (table[step.position * size + step.state] === 0) continue;
      const place = this.#placeAt(start, position);
      const plan = taken.map((section, i) => (i === step.section ? [...section, place] : section));
      yield* this.#list(
        start,
        table,
        step.position,
        step.state,
        step.section < taken.length ? plan : [...plan, [place]],
      );
    }
  }

  #placeAt(start: number, position: number): number {
    return (start + position) % this.#problem.places.length;
  }

  /** Whether an open section may still be open at a later position: not where another group begins. */
  #mayGoOn(start: number, position: number, later: number, state: number): boolean {
    if (this.#phaseOf(state) === 0 || later >= this.#problem.places.length) return true;
    const { places } = this.#problem;
    return places[this.#placeAt(start, position)]!.group === places[this.#placeAt(start, later)]!.group;
  }

  /** The ways to take the place at a position, each with the state and the position that follow. */
  #steps(start: number, position: number, state: number): readonly Step[] {
    const { places, apartMetres, isRing, sections } = this.#problem;
    const place = this.#placeAt(start, position);
    const { closed, phase, larger, free, ends } = this.#read(state);
    if (closed === sections) return NO_STEPS;
    if (isRing && position > 0 && this.#ringLength() - this.#metres(start, position) < apartMetres) return NO_STEPS;
    // A section that begins past the end of the list would come before the first one: another start meets that plan.
    const isPastEnd = isRing && start + position >= places.length;
    if (isPastEnd && (phase === 0 || sections === 1)) return NO_STEPS;
    const { isEnd, isStepFree } = places[place]!;
    const nowFree = Math.min(this.#shape.free - 1, free + (isStepFree ? 1 : 0));
    const nowEnds = this.#problem.mostEnds === null ? 0 : ends + (isEnd ? 1 : 0);
    if (nowEnds >= this.#shape.ends) return NO_STEPS;
    const next = this.#nextApart(start, position);
    const small = this.#small;
    const steps: Step[] = [];
    const add = (isLarger: boolean, taken: number, nowLarger: number) => {
      const isFull = taken === (isLarger ? small + 1 : small);
      const nowPhase = isFull ? 0 : isLarger ? small - 1 + taken : taken;
      const after = this.#write(isFull ? closed + 1 : closed, nowPhase, nowLarger, nowFree, isFull ? 0 : nowEnds);
      if (this.#mayGoOn(start, position, next, after)) {
        steps.push({ position: next, state: after, section: closed, isLarger });
      }
    };
    if (phase === 0) {
      add(false, 1, larger);
      if (larger < this.#larger) add(true, 1, larger + 1);
    } else if (phase < small) add(false, phase + 1, larger);
    else add(true, phase - small + 2, larger);
    return steps;
  }

  #metres(start: number, position: number): number {
    const place = this.#placeAt(start, position);
    const metres = this.#along[place]! - this.#along[start]!;
    return place < start ? metres + this.#ringLength() : metres;
  }

  #ringLength(): number {
    return this.#along.at(-1)!;
  }

  /** The next position that is far enough along the bank. */
  #nextApart(start: number, position: number): number {
    const { places, apartMetres } = this.#problem;
    const from = this.#metres(start, position);
    let next = position + 1;
    while (next < places.length && this.#metres(start, next) - from < apartMetres) next++;
    return next;
  }

  #final(): number {
    return this.#write(this.#shape.sections, 0, this.#larger, this.#shape.free - 1, 0);
  }

  #write(closed: number, phase: number, larger: number, free: number, ends: number): number {
    return (
      (((closed * this.#phases + phase) * (this.#larger + 1) + larger) * this.#shape.free + free) * this.#shape.ends +
      ends
    );
  }

  #read(state: number) {
    const ends = state % this.#shape.ends;
    let rest = Math.floor(state / this.#shape.ends);
    const free = rest % this.#shape.free;
    rest = Math.floor(rest / this.#shape.free);
    const larger = rest % (this.#larger + 1);
    rest = Math.floor(rest / (this.#larger + 1));
    return { ends, free, larger, phase: rest % this.#phases, closed: Math.floor(rest / this.#phases) };
  }

  /** Whether as many places could have been taken before a position, and the rest still can be: other states cost time only. */
  #isReached(position: number, state: number): boolean {
    const { closed, phase, larger } = this.#read(state);
    const isOpenLarger = phase >= this.#small;
    const open = isOpenLarger ? phase - this.#small + 1 : phase;
    const taken = closed * this.#small + larger - (isOpenLarger ? 1 : 0) + open;
    return taken <= position && this.#problem.entries - taken <= this.#problem.places.length - position;
  }

  #phaseOf(state: number): number {
    return Math.floor(state / (this.#shape.ends * this.#shape.free * (this.#larger + 1))) % this.#phases;
  }
}

interface Step {
  readonly position: number;
  readonly state: number;
  readonly section: number;
  readonly isLarger: boolean;
}

const NO_STEPS: readonly Step[] = [];

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** The place of a number among weights laid end to end. */
function pick(weights: readonly number[], at: number): number {
  let rest = at;
  for (let i = 0; i < weights.length; i++) {
    rest -= weights[i]!;
    if (rest < 0) return i;
  }
  // Rounding at the very end: the last that can be.
  return weights.findLastIndex((weight) => weight > 0);
}
