import type { Month } from '../domain/day.ts';
import { addressWith } from './shared-address.ts';
import { keepText, storeName, type TextStore } from './text-store.ts';

/** A month the reader chose, or all of them. */
export type ChosenMonth = Month | 'all';

/** Reads a month as an address or the phone's store holds it; null where it is none. */
export function readMonth(text: string | null): ChosenMonth | null {
  if (text === 'all') return 'all';
  if (text === null || !/^\d{1,2}$/.test(text)) return null;
  const month = Number(text);
  return month >= 1 && month <= 12 ? (month as Month) : null;
}

/** What was chosen: by the address that was shared, else on this phone before; null where nothing was. */
export function chosenMonth(search: string, store: TextStore | null, base: string): ChosenMonth | null {
  return (
    readMonth(new URLSearchParams(search).get('month')) ?? readMonth(store?.getItem(storeName(base, 'month')) ?? null)
  );
}

/** What an address asks for that no year has, to be said beside the choice; null where it asks for nothing wrong. */
export function monthFault(search: string): string | null {
  const asked = new URLSearchParams(search).get('month');
  if (asked === null || readMonth(asked) !== null) return null;
  return `The address asks for month “${asked.slice(0, 12)}”; there are months 1 to 12.`;
}

/** Keeps the choice for every page of the guide below a base; null forgets it. False where the phone refuses, or is full. */
export function keepMonth(store: TextStore | null, base: string, month: ChosenMonth | null): boolean {
  return keepText(store, storeName(base, 'month'), month === null ? null : String(month));
}

/** The address with the choice in it, so that it can be shared. */
export function addressWithMonth(address: string, month: ChosenMonth | null): string {
  return addressWith(address, { month: month === null ? null : String(month) });
}
