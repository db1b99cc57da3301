import { pegKey } from '../domain/peg.ts';
import { type Atlas, surveyOfPeg } from './atlas.ts';
import { WAY_UNDER_LINE_ACTION } from './peg-bank.ts';

/** The ways to a water's pegs that pass an overhead line: told once, on the water, with what to do on each. */
export interface WaysUnderLines {
  readonly title: string;
  readonly action: string;
  readonly ways: readonly {
    readonly from: string;
    /** "11 kV wood-pole line, to pegs 1, 2, 5". */
    readonly words: string;
  }[];
}

/** Every car park whose way to a peg of the water passes an overhead line, with those pegs; null where none does. */
export function waysUnderLinesOfWater(atlas: Atlas, waterId: string): WaysUnderLines | null {
  const pegs = atlas.pegsByWater.get(waterId) ?? [];
  const all = pegs.flatMap((peg) =>
    surveyOfPeg(atlas, pegKey(peg.water, peg.peg))
      .walks.filter(({ underLines }) => underLines.length > 0)
      .map(({ from, underLines }) => ({ peg: peg.peg, from, lines: underLines.join(', ') })),
  );
  const ways = [...Map.groupBy(all, ({ from }) => from)].map(([from, own]) => ({
    from,
    words: [
      ...new Set(own.map(({ lines }) => lines)),
      own.length === pegs.length ? 'to every peg' : `to pegs ${own.map(({ peg }) => peg).join(', ')}`,
    ].join(', '),
  }));
  if (ways.length === 0) return null;
  const title =
    ways.length === 1 ? `The way from ${ways[0]!.from} passes an overhead line` : 'Ways here pass an overhead line';
  return { title, action: WAY_UNDER_LINE_ACTION, ways };
}
