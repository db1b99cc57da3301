import type { Water } from '../domain/map.ts';
import { isRescueKit, kitKnown } from '../domain/rescue-kit.ts';
import type { BankRound } from '../domain/round.ts';

/** A water whose rescue kit says what the rounds found of it, so that every reader of the venue knows the same. */
export function withKitChecks(water: Water, rounds: readonly BankRound[]): Water {
  const places = water.map.places.map((place) => {
    if (!isRescueKit(place)) return place;
    const { checkedOn, state } = kitKnown(place, water, rounds);
    return {
      ...place,
      ...(checkedOn === null ? {} : { checkedOn }),
      ...(state === 'damaged' || state === 'missing' ? { kit: state } : {}),
    };
  });
  return { ...water, map: { ...water.map, places } };
}
