import type { Units } from '../../domain/bag.ts';
import { phoneStore } from '../phone-store.ts';
import { addressWith } from '../shared-address.ts';
import { keepText, storeName, type TextStore } from '../text-store.ts';

/** Units as they may be held: what the reader did not choose is left out, and is the venue's. */
export type ChosenUnits = Partial<Units>;

/** By the address that was shared, else on this phone before; nothing where neither says. */
export function chosenUnits(search: string, store: TextStore | null, base: string): ChosenUnits {
  const asked = new URLSearchParams(search);
  const [weight, length] = (store?.getItem(storeName(base, 'units')) ?? '').split(' ');
  return {
    ...readUnits(weight, length),
    ...readUnits(asked.get('weight'), asked.get('length')),
  };
}

/** What an address asks for that is no unit of the guide, to be said beside the choice; null where it asks for none. */
export function unitsFault(search: string): string | null {
  const asked = new URLSearchParams(search);
  const [weight, length] = [asked.get('weight'), asked.get('length')];
  const read = readUnits(weight, length);
  const wrong = [
    ...(weight === null || read.weight !== undefined
      ? []
      : [`weights in “${weight.slice(0, 12)}”: there are lb and kg`]),
    ...(length === null || read.length !== undefined
      ? []
      : [`lengths in “${length.slice(0, 12)}”: there are m and ft`]),
  ];
  return wrong.length === 0 ? null : `The address asks for ${wrong.join('; ')}.`;
}

/** Keeps the units for every page of the guide below a base; none forgets them. False where the phone refuses, or is full. */
export function keepUnits(store: TextStore | null, base: string, units: ChosenUnits): boolean {
  const { weight = '', length = '' } = units;
  return keepText(store, storeName(base, 'units'), weight === '' && length === '' ? null : `${weight} ${length}`);
}

/** The address with the units in it, so that it can be shared. */
export function addressWithUnits(address: string, units: ChosenUnits): string {
  return addressWith(address, { weight: units.weight ?? null, length: units.length ?? null });
}

/** The units of the page: those the reader chose, else the venue's, as `body[data-units]` says them ("lb m"). */
export function unitsOfPage(chosen: ChosenUnits): Units & { readonly own: Units } {
  const [weight, length] = (document.body.dataset.units ?? '').split(' ');
  const own: Units = { weight: weight === 'kg' ? 'kg' : 'lb', length: length === 'ft' ? 'ft' : 'm' };
  return { ...own, ...chosen, own };
}

/** The units this page is read in. */
export function unitsOfReader(): Units & { readonly own: Units } {
  return unitsOfPage(chosenUnits(location.search, phoneStore(), document.body.dataset.guideBase ?? '/'));
}

/** What of the units on a page is not the venue's: that alone is a choice. */
export function differing({ weight, length, own }: Units & { readonly own: Units }): ChosenUnits {
  return { ...(weight === own.weight ? {} : { weight }), ...(length === own.length ? {} : { length }) };
}

function readUnits(weight: string | null | undefined, length: string | null | undefined): ChosenUnits {
  return {
    ...(weight === 'kg' || weight === 'lb' ? { weight } : {}),
    ...(length === 'm' || length === 'ft' ? { length } : {}),
  };
}
