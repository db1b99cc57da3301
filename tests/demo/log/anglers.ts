import type { Chance } from '../chance.ts';

/** An invented angler: an opaque reference, a true effect on the log scale, and how often they turn out. */
export interface Angler {
  readonly ref: string;
  readonly effect: number;
  readonly keenness: number;
}

const LETTERS = 'abcdefghjkmnpqrstuvwxyz';
const DIGITS = '23456789';

/** Draws so many anglers with references as the import would make them. */
export function drawAnglers(count: number, sd: number, chance: Chance): Angler[] {
  const refs = new Set<string>();
  while (refs.size < count) refs.add(drawRef(chance));
  return [...refs].map((ref) => ({ ref, effect: sd * chance.normal(), keenness: Math.exp(0.8 * chance.normal()) }));
}

function drawRef(chance: Chance): string {
  const digitAt = chance.whole(0, 5);
  let ref = 'a-';
  for (let i = 0; i < 6; i++) {
    const isDigit = i === digitAt || chance.happens(0.25);
    ref += (isDigit ? DIGITS : LETTERS)[chance.whole(0, (isDigit ? DIGITS : LETTERS).length - 1)]!;
  }
  return ref;
}

/** Who turns out: so many different anglers, the keen ones more often (Efraimidis and Spirakis, 2006). */
export function turnOut(anglers: readonly Angler[], count: number, chance: Chance): Angler[] {
  return anglers
    .map((angler) => ({ angler, key: Math.log(chance.uniform()) / angler.keenness }))
    .sort((a, b) => b.key - a.key)
    .slice(0, count)
    .map(({ angler }) => angler);
}
