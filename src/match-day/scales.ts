import { GRAMS_PER_DRAM } from '../domain/weight.ts';
import { agreedValue, type Note, type Standing } from './match-log.ts';
import { STATUS_WORDS, type WeighedIn, type WeighedStatus } from './weighed-in.ts';

/** What the scales say of one peg. */
export interface OnScales {
  readonly status: WeighedStatus;
  /** Grams of each net; they add up. */
  readonly nets: readonly number[];
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

/** What may be a slip: so much heavier than all others, or the same net again. Null where it looks right. */
export function doubtOf(grams: number, nets: readonly number[], others: readonly number[]): 'heavy' | 'again' | null {
  if (nets.some((net) => Math.abs(net - grams) < 0.5)) return 'again';
  const most = Math.max(0, ...others);
  const total = grams + nets.reduce((sum, net) => sum + net, 0);
  return others.length >= 3 && total > 5 * most ? 'heavy' : null;
}

/** Reads what a note says of a peg; null where it is none of the scales'. */
export function onScales(value: unknown): OnScales | null {
  if (typeof value !== 'object' || value === null) return null;
  const { status, nets, fish } = value as Record<string, unknown>;
  if (typeof status !== 'string' || !Object.hasOwn(STATUS_WORDS, status)) return null;
  if (!Array.isArray(nets) || nets.length > MAX_NETS) return null;
  const isNet = (net: unknown) => typeof net === 'number' && net > 0 && net <= MAX_NET_GRAMS;
  if (!nets.every(isNet) || (status === 'weighed') !== nets.length > 0) return null;
  const counts = Object.entries(typeof fish === 'object' && fish !== null ? fish : {});
  if (!counts.every(([, count]) => Number.isInteger(count) && count >= 0 && count < 100_000)) return null;
  return { status: status as WeighedStatus, nets, fish: Object.fromEntries(counts) };
}

/** All nets of a peg together. */
export function totalGrams({ nets }: Pick<OnScales, 'nets'>): number {
  return nets.reduce((sum, net) => sum + net, 0);
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

/** Notes in the order of the phone's clock, for who asks what was changed when. */
export function historyOf(notes: readonly Note[], about: string): readonly Note[] {
  return notes.filter((note) => note.about === about).sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}
