import { plainPeg } from '../../domain/typed-peg.ts';
import type { Said } from '../page-words.ts';
import { keepText, storeName, type TextStore } from '../text-store.ts';

/** As many stand beside one another on a phone and can still be read. */
const MAX_KEPT = 4;

/** The pegs kept to be compared on one water, and what the reader must be told of them. */
export interface KeptPegs {
  readonly pegs: readonly string[];
  /** Empty where all is well; else messages, by key. */
  readonly said: readonly Said[];
}

/**
 * The pegs to compare: by the address that was shared (`?pegs=3,7,12`), else those kept on this phone. A number the water
 * has not, or a fifth one, is left out and said; capital letters and leading zeros make no difference.
 */
export function keptPegs(
  search: string,
  store: TextStore | null,
  place: { readonly base: string; readonly water: string },
  all: readonly string[],
): KeptPegs {
  const asked = new URLSearchParams(search).get('pegs') ?? store?.getItem(nameOf(place)) ?? '';
  const names = [
    ...new Set(
      asked
        .slice(0, 400)
        .split(/[\s,]+/)
        .filter((name) => name !== ''),
    ),
  ];
  const found = names.map((name) => all.find((peg) => plainPeg(peg) === plainPeg(name)));
  const unknown = names.filter((_, index) => found[index] === undefined);
  const pegs = [...new Set(found.filter((peg) => peg !== undefined))];
  const said: Said[] = [];
  if (unknown.length > 0) {
    said.push({ key: 'typed.noPegHere', values: { peg: unknown.map((name) => name.slice(0, 12)).join(', ') } });
  }
  if (pegs.length > MAX_KEPT) {
    said.push({ key: 'kept.leftOut', values: { most: MAX_KEPT, pegs: pegs.slice(MAX_KEPT).join(', ') } });
  }
  return { pegs: pegs.slice(0, MAX_KEPT), said };
}

/** Takes a peg in, or puts it out again; a fifth is refused in words. */
export function withPeg(kept: readonly string[], peg: string, isIn: boolean): KeptPegs {
  const others = kept.filter((each) => each !== peg);
  if (!isIn) return { pegs: others, said: [] };
  if (others.length >= MAX_KEPT) {
    return { pegs: kept, said: [{ key: 'kept.full', values: { most: MAX_KEPT, pegs: others.join(', ') } }] };
  }
  return { pegs: [...others, peg], said: [] };
}

/** Keeps them on this phone; false where the phone refuses, so that the page can say that only the address holds them. */
export function keepPegs(
  store: TextStore | null,
  place: { readonly base: string; readonly water: string },
  pegs: readonly string[],
): boolean {
  return keepText(store, nameOf(place), pegs.length === 0 ? null : pegs.join(','));
}

/** An address with the pegs in it, so that it can be shared. */
export function addressWithPegs(address: string, pegs: readonly string[]): string {
  const url = new URL(address);
  url.searchParams.delete('pegs');
  const rest = url.searchParams.toString();
  const own = pegs.length === 0 ? '' : `pegs=${pegs.map(encodeURIComponent).join(',')}`;
  url.search = [rest, own].filter((part) => part !== '').join('&');
  return url.href;
}

function nameOf({ base, water }: { readonly base: string; readonly water: string }): string {
  return storeName(base, `compare/${water}`);
}
