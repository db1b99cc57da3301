import { pegKey } from '../domain/peg.ts';
import { type Atlas, surveyOfPeg } from './atlas.ts';
import { WAY_UNDER_LINE_ACTION } from './peg-bank.ts';

/** A way that passes an overhead line to some pegs of a water: told once, on the water. */
export interface WayUnderLine {
  readonly title: string;
  readonly action: string;
  /** "11 kV wood-pole line", "pegs 1, 2, 5". */
  readonly facts: readonly string[];
}

/** Every car park whose way to a peg of the water passes an overhead line, with those pegs. */
export function waysUnderLinesOfWater(atlas: Atlas, waterId: string): readonly WayUnderLine[] {
  const pegs = atlas.pegsByWater.get(waterId) ?? [];
  const all = pegs.flatMap((peg) =>
    surveyOfPeg(atlas, pegKey(peg.water, peg.peg))
      .walks.filter(({ underLines }) => underLines.length > 0)
      .map(({ from, underLines }) => ({ peg: peg.peg, from, lines: underLines.join(', ') })),
  );
  return [...Map.groupBy(all, ({ from }) => from)].map(([from, ways]) => ({
    title: `The way from ${from} passes an overhead line`,
    action: WAY_UNDER_LINE_ACTION,
    facts: [
      ...new Set(ways.map(({ lines }) => lines)),
      ways.length === pegs.length ? 'to every peg' : `to pegs ${ways.map(({ peg }) => peg).join(', ')}`,
    ],
  }));
}
