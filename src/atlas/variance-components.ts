import type { BagTables, ModelSummary } from '../ratings/ratings.ts';

/** One term of the model with its usual swing for every bag: `1.49`, to be read "times or divided by". */
export interface PartRow {
  readonly name: string;
  readonly means: string;
  /** In the order of the bags; null where the form of the model has no such term. */
  readonly swings: readonly (string | null)[];
}

type Term = keyof ModelSummary['sd'];

const TERMS: readonly { readonly term: Term; readonly name: string; readonly means: string }[] = [
  {
    term: 'event',
    name: 'The day',

    means: 'what weather, water and stock do to every bag of an event',
  },
  {
    term: 'angler',
    name: 'The angler',

    means: 'how anglers who come again differ from each other',
  },
  {
    term: 'peg',
    name: 'The peg itself',

    means: 'what a peg has beyond its features, all year',
  },
  {
    term: 'feature',
    name: 'A feature',

    means: 'what a corner, a margin or an island is worth all year',
  },
  {
    term: 'featureMonth',
    name: 'A feature in its month',

    means: 'how that worth moves through the year',
  },
  { term: 'residual', name: 'All the rest', means: 'the session: shoals, swims, luck' },
];

/** How far each term of the model swings a bag: the factor within which two of three lie, `exp(sd)`. */
export function varianceComponents(bags: readonly BagTables[]): readonly PartRow[] {
  return TERMS.map(({ term, name, means }) => ({
    name,
    means,
    swings: bags.map(({ model }) => (model.sd[term] > 0 ? Math.exp(model.sd[term]).toFixed(2) : null)),
  })).filter(({ swings }) => swings.some((swing) => swing !== null));
}

/** The same as plain sentences: "The day matters more than the peg: …". Empty where the model has no such terms. */
export function sizeOfPartsWords(model: ModelSummary | undefined): readonly string[] {
  if (model === undefined) return [];
  const { sd, sessions, censored } = model;
  if (sessions === censored) {
    return ['No bag was weighed yet: the factors here are what is assumed before the log has said anything.'];
  }
  const words: string[] = [];
  const times = (size: number) => `by a factor of ${Math.exp(size).toFixed(2)} up or down`;
  if (sd.event > 0 && sd.peg > 0) words.push(compareWords('The day', sd.event, 'the peg', pegSd(sd)));
  if (sd.angler > 0 && sd.peg > 0) words.push(compareWords('The angler', sd.angler, 'the peg', pegSd(sd)));
  if (sd.residual > 0) {
    words.push(
      `When day, angler and peg are known, a bag still swings ${times(sd.residual)}: two of three bags lie within it of what was expected.`,
    );
  }
  return words;
}

/** Peg, features and their months together: what a draw can hand to an angler. */
function pegSd({ peg, feature, featureMonth }: ModelSummary['sd']): number {
  return Math.hypot(peg, feature, featureMonth);
}

function compareWords(one: string, oneSd: number, other: string, otherSd: number): string {
  const [a, b] = [Math.exp(oneSd), Math.exp(otherSd)];
  const verb = Math.abs(a - b) < 0.03 ? 'matters about as much as' : a > b ? 'matters more than' : 'matters less than';
  return `${one} ${verb} ${other}: a usual swing is times or divided by ${a.toFixed(2)} for ${one.toLowerCase()}, ${b.toFixed(2)} for ${other} with its features.`;
}
