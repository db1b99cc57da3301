import { type Day, isDay } from '../domain/day.ts';

/** A depth the person plumbed themselves at one line, on a day. */
export interface OwnDepth {
  readonly line: string;
  readonly metres: number;
  readonly day: Day;
}

/** What of a browser's store is used: `localStorage`, or a stand-in. */
export type TextStore = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/** Own depths of one peg, in the order they were kept. What cannot be read as such is passed over. */
export function readOwnDepths(store: TextStore, pegKey: string): readonly OwnDepth[] {
  const text = store.getItem(storeName(pegKey));
  if (text === null) return [];
  try {
    const kept: unknown = JSON.parse(text);
    return Array.isArray(kept) ? kept.filter(isOwnDepth) : [];
  } catch {
    return [];
  }
}

/** Keeps a depth; an earlier one of the same line gives way. */
export function keepOwnDepth(store: TextStore, pegKey: string, depth: OwnDepth): void {
  writeOwnDepths(store, pegKey, [...others(store, pegKey, depth.line), depth]);
}

/** Forgets the depth of one line. */
export function forgetOwnDepth(store: TextStore, pegKey: string, line: string): void {
  writeOwnDepths(store, pegKey, others(store, pegKey, line));
}

function others(store: TextStore, pegKey: string, line: string): readonly OwnDepth[] {
  return readOwnDepths(store, pegKey).filter((depth) => depth.line !== line);
}

function writeOwnDepths(store: TextStore, pegKey: string, depths: readonly OwnDepth[]): void {
  if (depths.length === 0) store.removeItem(storeName(pegKey));
  else store.setItem(storeName(pegKey), JSON.stringify(depths));
}

function storeName(pegKey: string): string {
  return `peg-atlas/own-depths/${pegKey}`;
}

function isOwnDepth(value: unknown): value is OwnDepth {
  if (typeof value !== 'object' || value === null) return false;
  const { line, metres, day } = value as Record<string, unknown>;
  return typeof line === 'string' && typeof metres === 'number' && metres > 0 && typeof day === 'string' && isDay(day);
}
