import { addDays, type Day, formatDay, isDay } from '../domain/day.ts';
import { addressWith } from './shared-address.ts';
import { keepText, storeName, type TextStore } from './text-store.ts';

/** Of later days nothing is known that a guide could tell (our own choice). */
const FARTHEST_DAYS = 366;

/** The day a reader chose, by the address that was shared, else on this phone before; null for today, and for a day gone by. */
export function chosenDay(search: string, store: TextStore | null, base: string, today: Day): Day | null {
  const asked = new URLSearchParams(search).get('day');
  return [asked, store?.getItem(storeName(base, 'day')) ?? null].find((day) => dayFault(day, today) === null) ?? null;
}

/** What is wrong with a day asked for, to be said beside the choice; null where the guide can be read for it. */
export function dayFault(day: string | null, today: Day): string | null {
  if (day === null || !isDay(day)) return `There is no day “${(day ?? '').slice(0, 12)}”: a day is written ${today}.`;
  if (day <= today) return `${formatDay(day)} is not to come: the guide tells of today and the days after it.`;
  return day > addDays(today, FARTHEST_DAYS) ? `${formatDay(day)} is more than a year off.` : null;
}

/** The same of an address; null where it asks for no day, or for today. */
export function dayFaultOfAddress(search: string, today: Day): string | null {
  const asked = new URLSearchParams(search).get('day');
  return asked === null || asked === today ? null : dayFault(asked, today);
}

/** Keeps the day for every page of the guide below a base; null forgets it. False where the phone refuses, or is full. */
export function keepDay(store: TextStore | null, base: string, day: Day | null): boolean {
  return keepText(store, storeName(base, 'day'), day);
}

/** The address with the day in it, so that it can be shared. */
export function addressWithDay(address: string, day: Day | null): string {
  return addressWith(address, { day });
}
