import type { Day } from './day.ts';
import { isCurrent } from './hazard.ts';
import type { MapPlace, Water } from './map.ts';
import { onceFor } from './once-for.ts';
import type { BankRound, KitState, RoundEntry } from './round.ts';

/** What is known of a piece of rescue kit: when it was last looked at, and whether it is there to be used. */
export interface KitKnown {
  readonly checkedOn: Day | null;
  /** Null where nobody ever looked. */
  readonly state: KitState | null;
}

/** Whether a place of the map is rescue kit: it is checked in on the round. */
export function isRescueKit({ kind }: Pick<MapPlace, 'kind'>): boolean {
  return kind === 'throw-line' || kind === 'aed';
}

/**
 * What is known of a piece of rescue kit, from the map, the rounds and the hazards recorded at it. Kit of which the latest
 * word is that it is missing is missing until somebody finds it in its place, or clears the hazard.
 */
export function kitKnown(
  place: MapPlace,
  water: Pick<Water, 'id' | 'hazards'>,
  rounds: readonly BankRound[],
): KitKnown {
  const last = lastLooks(rounds).get(`${water.id}/${place.id}`);
  const isMissing = (water.hazards ?? []).some(
    (hazard) =>
      hazard.kind === 'missing-kit' &&
      hazard.mappedAs === place.id &&
      isCurrent(hazard) &&
      !(last?.kit === 'in-place' && last.day > hazard.foundOn),
  );
  const mapState = place.checkedOn === undefined ? null : ('in-place' as const);
  const state = isMissing ? (last?.kit === 'damaged' ? 'damaged' : 'missing') : (last?.kit ?? mapState);
  const days = [last?.day, place.checkedOn].filter((day) => day !== undefined).sort();
  return { checkedOn: days.at(-1) ?? null, state };
}

/** A round's word on a piece of kit, with the day that it was looked at. */
type KitLook = RoundEntry & { readonly day: Day };

/** The last look at each piece of kit, by `water/place`; of two on one day the one that stands later. */
const lastLooks = onceFor((rounds: readonly BankRound[]): ReadonlyMap<string, KitLook> => {
  const looks = new Map<string, KitLook>();
  for (const round of rounds) {
    for (const entry of round.entries) {
      if (entry.entry !== 'kit-checked') continue;
      const day = entry.day ?? round.day;
      const kit = `${entry.water}/${entry.mappedAs}`;
      const last = looks.get(kit);
      if (last === undefined || last.day <= day) looks.set(kit, { ...entry, day });
    }
  }
  return looks;
});

/** "missing when last looked at"; null where nothing is known against it. */
export function kitTrouble(state: KitKnown['state']): string | null {
  return state === 'missing' || state === 'damaged' ? `${state} when last looked at` : null;
}

/** A piece of rescue kit by its name, with what it is where the name does not say. */
export function rescueKitWords({ kind, name }: Pick<MapPlace, 'kind' | 'name'>): string {
  const [what, isSaid] = kind === 'aed' ? ['Defibrillator', /defib|aed/i] : ['Throw line', /throw|life-?line/i];
  return isSaid.test(name) ? name : `${what}, ${name}`;
}
