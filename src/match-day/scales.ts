import { GRAMS_PER_DRAM } from '../domain/weight.ts';
import { agreedValue, type Note, type Standing } from './match-log.ts';
import { STATUS_WORDS, type WeighedIn, type WeighedStatus } from './weighed-in.ts';

/** One net on the scales. */
export interface Net {
  readonly grams: number;
  /** The part of the bag that is in it, where it was weighed apart; null where it may hold fish of several. */
  readonly part: string | null;
}

/** What the scales say of one peg. */
export interface OnScales {
  readonly status: WeighedStatus;
  /** They add up. */
  readonly nets: readonly Net[];
  /** Fish counted, by bag part, where the club counts. */
  readonly fish: Readonly<Record<string, number>>;
}

/** A peg that was moved on the day, because the first turned out unsafe. */
export interface PegMoved {
  readonly to: string;
  readonly why: string;
}

const MAX_NETS = 20;
/** No net of a stillwater weighs more: 500 lb. */
export const MAX_NET_GRAMS = 226_796;

/** Names of things noted. */
export const ABOUT = {
  scales: (peg: string) => `scales ${peg}`,
  moved: (peg: string) => `moved ${peg}`,
  entry: (id: string) => `entry ${id}`,
  holds: (id: string) => `holds ${id}`,
  draw: 'draw',
} as const;

/** Pounds, ounces and drams as three figures on the keys. Null where one of them is no whole number in its range. */
export function gramsOfPounds(pounds: string, ounces: string, drams: string): number | null {
  const whole = [pounds, ounces, drams].map((text) =>
    text.trim() === '' ? 0 : /^\d{1,3}$/.test(text.trim()) ? Number(text) : Number.NaN,
  );
  const [lb = Number.NaN, oz = Number.NaN, dr = Number.NaN] = whole;
  if (Number.isNaN(lb + oz + dr) || oz > 15 || dr > 15) return null;
  const grams = (lb * 256 + oz * 16 + dr) * GRAMS_PER_DRAM;
  return grams > 0 && grams <= MAX_NET_GRAMS ? grams : null;
}

/** Kilograms as typed, with a point or a comma. */
export function gramsOfKilograms(text: string): number | null {
  const written = text.trim().replace(',', '.');
  if (!/^\d{1,3}(?:\.\d{1,3})?$/.test(written)) return null;
  const grams = Math.round(Number(written) * 1000);
  return grams > 0 && grams <= MAX_NET_GRAMS ? grams : null;
}

/**
 * What may be a slip: the same net again, a bag over five times the heaviest of the day, or one above all that the log holds. Null
 * where it looks right.
 * @param heaviest the heaviest bag in the log of these waters; 0 where there is none
 */
export function doubtOf(
  grams: number,
  nets: readonly Net[],
  others: readonly number[],
  heaviest = 0,
): 'heavy' | 'again' | 'record' | null {
  if (nets.some((net) => Math.abs(net.grams - grams) < 0.5)) return 'again';
  const total = grams + totalGrams({ nets });
  if (others.length >= 3 && total > 5 * Math.max(...others)) return 'heavy';
  return heaviest > 0 && total > heaviest ? 'record' : null;
}

/** Reads what a note says of a peg; null where it is none of the scales'. */
export function onScales(value: unknown): OnScales | null {
  if (typeof value !== 'object' || value === null) return null;
  const { status, nets, fish } = value as Record<string, unknown>;
  if (typeof status !== 'string' || !Object.hasOwn(STATUS_WORDS, status)) return null;
  if (!Array.isArray(nets) || nets.length > MAX_NETS) return null;
  const read = nets.flatMap(readNet);
  if (read.length < nets.length || (status === 'weighed') !== nets.length > 0) return null;
  const counts = Object.entries(typeof fish === 'object' && fish !== null ? fish : {});
  if (!counts.every(([, count]) => Number.isInteger(count) && count >= 0 && count < 100_000)) return null;
  return { status: status as WeighedStatus, nets: read, fish: Object.fromEntries(counts) };
}

/** A net as it was noted; a bare number is one that may hold anything. Nothing where it is no net. */
function readNet(net: unknown): readonly Net[] {
  const { grams, part } = (typeof net === 'number' ? { grams: net, part: null } : (net ?? {})) as Record<
    string,
    unknown
  >;
  const isWhole = typeof grams === 'number' && grams > 0 && grams <= MAX_NET_GRAMS;
  return isWhole && (part === null || typeof part === 'string') ? [{ grams, part }] : [];
}

/** All nets of a peg together. */
export function totalGrams({ nets }: Pick<OnScales, 'nets'>): number {
  return nets.reduce((sum, { grams }) => sum + grams, 0);
}

/**
 * What each part of a bag weighs, where every net was weighed apart: a part that has no net weighs nothing, and all parts
 * together are the total. Null where a net may hold fish of several parts: then none of them is known whole.
 */
export function partGrams(
  { nets }: Pick<OnScales, 'nets'>,
  parts: readonly string[],
): Readonly<Record<string, number>> | null {
  if (nets.length === 0 || nets.some(({ part }) => part === null || !parts.includes(part))) return null;
  return Object.fromEntries(parts.map((part) => [part, totalGrams({ nets: nets.filter((net) => net.part === part) })]));
}

/** A net and a net are the same where they say the same. */
const netKey = ({ grams, part }: Net) => `${part ?? ''} ${grams.toFixed(1)}`;

/**
 * What two scales weighed of one peg, all nets of both: one that both wrote down counts once, fish as the scale counted most. Null
 * where not all of them weighed, or where it is no more than one of them says already.
 */
export function bothNets(said: readonly (OnScales | null)[]): OnScales | null {
  const scales = said.flatMap((one) => (one?.status === 'weighed' ? one : []));
  if (scales.length < 2 || scales.length < said.length) return null;
  const nets: Net[] = [];
  for (const one of scales) {
    const known = nets.map(netKey);
    for (const net of one.nets) {
      const at = known.indexOf(netKey(net));
      if (at === -1) nets.push(net);
      else known.splice(at, 1);
    }
  }
  if (nets.length > MAX_NETS || scales.some((one) => one.nets.length === nets.length)) return null;
  const parts = new Set(scales.flatMap(({ fish }) => Object.keys(fish)));
  const fish = Object.fromEntries(
    [...parts].map((part) => [part, Math.max(...scales.map((one) => one.fish[part] ?? 0))]),
  );
  return { status: 'weighed', nets, fish };
}

/** What a note says of a moved peg; null where the peg is where the plan has it. */
export function movedPeg(value: unknown): PegMoved | null {
  if (typeof value !== 'object' || value === null) return null;
  const { to, why } = value as Record<string, unknown>;
  return typeof to === 'string' && typeof why === 'string' ? { to, why } : null;
}

/** The pegs that have been to the scales and of which all phones agree, as the results count them. */
export function weighedIn(
  sections: readonly { readonly name: string; readonly pegs: readonly string[] }[],
  standing: Standing,
): readonly WeighedIn[] {
  return sections.flatMap(({ name, pegs }) =>
    pegs.flatMap((peg) => {
      const said = onScales(agreedValue(standing, ABOUT.scales(peg)));
      return said === null ? [] : [{ section: name, peg, status: said.status, grams: totalGrams(said) }];
    }),
  );
}

/**
 * Notes of one thing in the order in which they were made, for who asks what was changed when: each behind those it was made in
 * place of, whatever the clocks say, and by the clock where neither knew of the other.
 */
export function historyOf(notes: readonly Note[], about: string): readonly Note[] {
  const waiting = new Map(notes.flatMap((note) => (note.about === about ? [[note.id, note] as const] : [])));
  const history: Note[] = [];
  while (waiting.size > 0) {
    const free = [...waiting.values()].filter(({ replaces }) => !replaces.some((id) => waiting.has(id)));
    // Only in an edited file do notes wait for one another in a ring: they are told all the same.
    const next = free.length > 0 ? free : [...waiting.values()];
    history.push(...next.sort((a, b) => a.at.localeCompare(b.at) || a.id.localeCompare(b.id)));
    for (const { id } of next) waiting.delete(id);
  }
  return history;
}
