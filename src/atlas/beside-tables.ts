import { capitalised } from '../domain/capitalised.ts';
import type { BesideWorth } from '../ratings/ratings.ts';
import type { Atlas } from './atlas.ts';
import { intervalRow } from './drawing/interval-row.ts';
import { type WorthWords, worthWords } from './worth-words.ts';

/** What a day or the bed gives beside the peg, as tables of the features page: one thing with all its curves. */
export interface BesideTables {
  readonly id: BesideWorth['of'];
  readonly heading: string;
  readonly words: string;
  readonly tables: readonly {
    readonly caption: string;
    readonly head: string;
    readonly rows: readonly { readonly value: string; readonly known: WorthWords; readonly drawing: string }[];
  }[];
}

const TOLD: readonly {
  readonly of: BesideWorth['of'];
  readonly heading: string;
  readonly words: string;
  readonly head: string;
  readonly value: (at: number) => string;
}[] = [
  {
    of: 'room',
    heading: 'Room beside a peg',
    words:
      'What pegs left empty beside an angler that day are worth, two on either side at most; an end peg has the open bank for room.',
    head: 'empty pegs',
    value: String,
  },
  {
    of: 'wind',
    heading: 'Wind along the water',
    words:
      'What the open water along the day’s wind is worth, from the peg into the wind: little where it comes off the bank behind, most where it blows the length of the water.',
    head: 'open water',
    value: (at) => `${at} m`,
  },
  {
    of: 'depth',
    heading: 'Depth through the year',
    words:
      'What the depth below datum on a pole of 6 m and of 13 m is worth by season. A peg’s own worth holds the most of it already: do not multiply the two.',
    head: 'depth',
    value: (at) => `${at} m`,
  },
  {
    of: 'colour',
    heading: 'Colour of the water',
    words:
      'What the depth down the edge is worth by the colour of the water, beside what a peg is worth on all days. Anglers hold that coloured water brings fish in close (common practice, no source): here is what this log says.',
    head: 'depth down the edge',
    value: (at) => `${at} m`,
  },
];

/** The terms beside the model that earned their place, ready to show; none where none did. */
export function besideTables({ ratings }: Pick<Atlas, 'ratings'>): readonly BesideTables[] {
  return TOLD.flatMap(({ of, heading, words, head, value }) => {
    const curves = Map.groupBy(
      ratings.besides.filter((worth) => worth.of === of),
      ({ group }) => group,
    );
    if (curves.size === 0) return [];
    const tables = [...curves].map(([group, points]) => ({
      caption: group === '' ? 'Against the average of all' : capitalised(group),
      head,
      rows: points.map(({ at, worth, low80, high80, evidence, sessions }) => {
        const shown = { value: worth, low: low80, high: high80, evidence };
        return { value: value(at), known: worthWords(shown, sessions), drawing: intervalRow(shown) };
      }),
    }));
    return [{ id: of, heading, words, tables }];
  });
}
