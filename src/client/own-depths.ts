import { type Day, isDay } from '../domain/day.ts';
import { storeName, type TextStore } from './text-store.ts';

/** A depth the person plumbed themselves at one line, on a day. */
export interface OwnDepth {
  readonly line: string;
  readonly metres: number;
  readonly day: Day;
}

/** A peg of the guide that stands below a base, with a slash at each end: two guides of one host may both have a peg 1. */
export interface GuidePeg {
  readonly base: string;
  readonly key: string;
}

/** Up to this day all guides of a host kept their depths under the names that the one at its root still uses. */
const SHARED_UNTIL: Day = '2026-11-27';

/**
 * Own depths of one peg, in the order they were kept. What cannot be read as such is passed over. What was kept while all
 * guides of a host shared one place may be of any of them, and so is shown in each, until it is changed there.
 */
export function readOwnDepths(store: TextStore, peg: GuidePeg): readonly OwnDepth[] {
  const text = store.getItem(nameOf(peg));
  if (text !== null || peg.base === '/') return depthsIn(text);
  return depthsIn(store.getItem(nameOf({ ...peg, base: '/' }))).filter(({ day }) => day <= SHARED_UNTIL);
}

function depthsIn(text: string | null): readonly OwnDepth[] {
  if (text === null) return [];
  try {
    const kept: unknown = JSON.parse(text);
    return Array.isArray(kept) ? kept.filter(isOwnDepth) : [];
  } catch {
    return [];
  }
}

/** Keeps a depth; an earlier one of the same line gives way. */
export function keepOwnDepth(store: TextStore, peg: GuidePeg, depth: OwnDepth): void {
  writeOwnDepths(store, peg, [...others(store, peg, depth.line), depth]);
}

/** Forgets the depth of one line. */
export function forgetOwnDepth(store: TextStore, peg: GuidePeg, line: string): void {
  writeOwnDepths(store, peg, others(store, peg, line));
}

function others(store: TextStore, peg: GuidePeg, line: string): readonly OwnDepth[] {
  return readOwnDepths(store, peg).filter((depth) => depth.line !== line);
}

function writeOwnDepths(store: TextStore, peg: GuidePeg, depths: readonly OwnDepth[]): void {
  // Below the root an empty list says that nothing is left here, whatever was once shared.
  if (depths.length === 0 && peg.base === '/') store.removeItem(nameOf(peg));
  else store.setItem(nameOf(peg), JSON.stringify(depths));
}

function nameOf({ base, key }: GuidePeg): string {
  return storeName(base, `own-depths/${key}`);
}

function isOwnDepth(value: unknown): value is OwnDepth {
  if (typeof value !== 'object' || value === null) return false;
  const { line, metres, day } = value as Record<string, unknown>;
  return typeof line === 'string' && typeof metres === 'number' && metres > 0 && typeof day === 'string' && isDay(day);
}
