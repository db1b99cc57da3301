import MiniSearch from 'minisearch';
import type { SearchEntry, SearchKind } from '../../atlas/search-entries.ts';
import { readTypedPeg } from '../../domain/typed-peg.ts';
import type { WordKey } from '../../words/languages.ts';
import type { Say } from '../../words/say.ts';
import { sayAll } from '../page-words.ts';

/** Entries found of one kind, best first. */
export interface FoundGroup {
  readonly kind: SearchKind;
  readonly entries: readonly { readonly entry: SearchEntry; readonly terms: readonly string[] }[];
}

export interface Found {
  readonly groups: readonly FoundGroup[];
  /** "7 pegs, 1 feature." or what is wrong with what was typed. */
  readonly said: string;
}

const KINDS: readonly (readonly [kind: SearchKind, name: WordKey, count: WordKey])[] = [
  ['peg', 'found.pegs', 'found.countPegs'],
  ['gone', 'found.gone', 'found.countGone'],
  ['feature', 'found.features', 'found.countFeatures'],
  ['notice', 'found.notices', 'found.countNotices'],
  ['water', 'found.waters', 'found.countWaters'],
  ['rule', 'found.rules', 'found.countRules'],
];

/** Words shorter than this are taken as they are typed: a letter more or less would be another word. */
const FUZZY_FROM = 5;

/** Makes the guide searchable: every word has to be there, its beginning is enough, a long one may be mistyped by a letter. */
export function searchGuide(entries: readonly SearchEntry[], say: Say): (typed: string) => Found {
  const index = new MiniSearch<SearchEntry & { readonly id: number }>({
    fields: ['title', 'text'],
    tokenize: (text) => text.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== ''),
    searchOptions: {
      boost: { title: 3 },
      prefix: true,
      fuzzy: (term) => (term.length >= FUZZY_FROM ? 1 : false),
      combineWith: 'AND',
    },
  });
  index.addAll(entries.map((entry, id) => ({ ...entry, id })));
  const pegs = entries.flatMap((entry) => (entry.peg === undefined ? [] : [{ ...entry.peg, entry }]));
  return (typed) => {
    if (typed.trim() === '') return { groups: [], said: say('found.type') };
    const named = readTypedPeg(typed, pegs);
    if (named !== null && named.pegs.length > 0) {
      return {
        ...grouped(
          named.pegs.map(({ entry }) => ({ entry, terms: [] })),
          '',
          say,
        ),
        ...(named.faults.length > 0 && { said: sayAll(named.faults, say) }),
      };
    }
    const found = index.search(typed).map(({ id, terms }) => ({ entry: entries[id]!, terms }));
    const { groups, said } = grouped(found, say('found.none', { typed: typed.trim().slice(0, 60) }), say);
    if (named === null) return { groups, said };
    const fault = sayAll(named.faults, say);
    return { groups, said: groups.length === 0 ? fault : `${fault} ${say('found.allTheSame', { counts: said })}` };
  };
}

function grouped(found: FoundGroup['entries'], none: string, say: Say): Found {
  const groups = KINDS.flatMap(([kind]) => {
    const own = found.filter(({ entry }) => entry.kind === kind);
    return own.length === 0 ? [] : [{ kind, entries: own }];
  });
  const counts = groups.map(({ kind, entries }) => {
    const [, , count] = KINDS.find(([each]) => each === kind)!;
    return say(count, { count: entries.length });
  });
  return { groups, said: counts.length === 0 ? none : `${counts.join(', ')}.` };
}

/** The name of a group of results. */
export function kindName(kind: SearchKind, say: Say): string {
  const [, name] = KINDS.find(([each]) => each === kind)!;
  return say(name);
}

/** A piece of a text about the first of some words, cut between words: what stands before, and whether each piece is such a word. */
export function excerpt(text: string, terms: readonly string[], length = 150): readonly (readonly [string, boolean])[] {
  const lower = text.toLowerCase();
  const first = Math.min(...terms.map((term) => lower.indexOf(term)).filter((at) => at >= 0), text.length);
  const wanted = first === text.length ? 0 : Math.max(0, first - 40);
  const from = wanted === 0 ? 0 : lower.indexOf(' ', wanted) + 1;
  const to = from + length >= text.length ? text.length : Math.max(from + 1, text.lastIndexOf(' ', from + length));
  const shown = `${from > 0 ? '… ' : ''}${text.slice(from, to)}${to < text.length ? ' …' : ''}`;
  return shown
    .split(/([\p{L}\p{N}]+)/u)
    .filter((piece) => piece !== '')
    .map((piece) => [piece, terms.some((term) => piece.toLowerCase() === term)]);
}
