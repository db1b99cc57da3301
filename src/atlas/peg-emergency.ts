import type { Units } from '../domain/bag.ts';
import { type Check, checkOf } from '../domain/due.ts';
import { FIRST_STEP_TEXTS } from '../domain/first-step-texts.ts';
import type { GateLock } from '../domain/map.ts';
import type { Peg } from '../domain/peg.ts';
import { compassWords, formatDistance, formatPosition } from '../domain/place-words.ts';
import { kitKnown } from '../domain/rescue-kit.ts';
import { sentenceWords } from '../domain/safety-text.ts';
import type { Contact, Venue, VenueSettings } from '../domain/venue.ts';
import type { NearbyPlace, PegSurvey } from '../ground/survey.ts';
import { safetyFigures } from './safety-advice.ts';

/** A gate, how it is locked, and who opens it. */
export interface EmergencyGate {
  /** "Gate for an ambulance", "at night", "nearer, but locked". */
  readonly what: string;
  /** "Brick Lane gate, 140 m north-east (walk 182 m), locked at night". */
  readonly words: string;
  /** Who opens it where it is locked, and the number to call: null where nobody is named. */
  readonly opener: { readonly role: string; readonly phone: string | null } | null;
}

/** Rescue kit near a peg: where it hangs and when it was last looked at. */
export interface KitNearby {
  readonly what: string;
  readonly words: string;
  readonly check: Check | null;
}

/** What a caller reads out, and where help hangs. */
export interface PegEmergency {
  readonly where: string;
  /** Null outside Great Britain. */
  readonly gridReference: string | null;
  readonly position: string;
  readonly gates: readonly EmergencyGate[];
  /** Rescue kit with its own check; null where none is mapped. */
  readonly kit: readonly KitNearby[];
  /** Of the kit, what is thrown to someone in the water: told with those steps. */
  readonly throwLine: KitNearby;
  /** First steps in a few words: "Someone is in the water", then what to do. */
  readonly steps: readonly { readonly heading: string; readonly words: string }[];
}

const LOCK_WORDS: Readonly<Record<GateLock, string>> = {
  no: 'never locked',
  night: 'locked at night',
  always: 'kept locked',
};

/** First steps that stand on every sheet, since no other page may be at hand. */
const STEPS_ON_SHEET: readonly string[] = ['in-water', 'not-breathing', 'line-touched'];

/** The emergency block of a peg. What is not mapped or recorded reads "not known". */
export function pegEmergency(peg: Peg, waterName: string, survey: PegSurvey, venue: Venue): PegEmergency {
  const { settings } = venue;
  const { emergency } = settings;
  const town = emergency.nearestTown === undefined ? '' : `, near ${emergency.nearestTown}`;
  return {
    where: `${settings.name}${town}: ${waterName}, peg ${peg.peg}`,
    gridReference: survey.gridReference,
    position: formatPosition(peg.at),
    gates: emergencyGates(survey, settings),
    kit: [kitNearby('Defibrillator (AED)', survey.nearestAed, venue)],
    throwLine: throwLineNear(survey, venue),
    steps: firstSteps(STEPS_ON_SHEET, settings),
  };
}

/** The throw line nearest to a peg, its walk, and whether it was there when somebody last looked. */
export function throwLineNear({ nearestThrowLine }: PegSurvey, venue: Venue): KitNearby {
  return kitNearby('Throw line', nearestThrowLine, venue);
}

function kitNearby(what: string, nearby: NearbyPlace | null, { settings, waters, rounds }: Venue): KitNearby {
  const { units, inspection } = settings;
  if (nearby === null) return { what, words: placeWords(null, units), check: null };
  const water = waters.find(({ map }) => map.places.includes(nearby.place));
  const known = water === undefined ? null : kitKnown(nearby.place, water, rounds);
  const isLost = known?.state === 'missing' || known?.state === 'damaged';
  return {
    what,
    words: `${placeWords(nearby, units)}${isLost ? `: ${known?.state?.toUpperCase()} when last looked at` : ''}`,
    check: checkOf(known?.checkedOn ?? nearby.place.checkedOn, undefined, inspection.rescueKitDays),
  };
}

/** First steps by their names, each as one paragraph with the venue's numbers. */
export function firstSteps(ids: readonly string[], settings: VenueSettings): PegEmergency['steps'] {
  const figures = safetyFigures(settings);
  return FIRST_STEP_TEXTS.filter(({ id }) => ids.includes(id)).map(({ heading, sentences }) => ({
    heading,
    words: sentences.map((sentence) => sentenceWords(sentence, figures) ?? '').join(' '),
  }));
}

function emergencyGates({ gates }: PegSurvey, { units, contacts }: VenueSettings): readonly EmergencyGate[] {
  const { best, atNight, lockedNearer } = gates;
  const gate = (what: string, place: NearbyPlace): EmergencyGate => {
    const { locked, openedBy, hours } = place.place;
    const lock = locked === undefined ? 'whether it is locked is not known' : LOCK_WORDS[locked];
    const open = hours === undefined ? '' : `, open ${hours}`;
    return {
      what,
      words: `${placeWords(place, units)}, ${lock}${open}`,
      opener: locked === 'no' || openedBy === undefined ? null : { role: openedBy, phone: phoneOf(openedBy, contacts) },
    };
  };
  if (best === null) return [{ what: 'Gate for an ambulance', words: 'not known', opener: null }];
  return [
    gate('Gate for an ambulance', best),
    ...(atNight === null ? [] : [gate('At night', atNight)]),
    ...(lockedNearer === null ? [] : [gate('Nearer, but not open', lockedNearer)]),
  ];
}

/** The number of a role among the venue's contacts; null where none is given. */
function phoneOf(role: string, contacts: readonly Contact[]): string | null {
  const wanted = role.trim().toLowerCase();
  return contacts.find((contact) => contact.role.trim().toLowerCase() === wanted)?.phone ?? null;
}

/** "Brick Lane gate, 140 m north-east (walk 182 m)". */
function placeWords(place: NearbyPlace | null, units: Units): string {
  if (place === null) return 'not known';
  const straight = `${formatDistance(place.distanceMetres, units)} ${compassWords(place.bearingDegrees)}`;
  const walk = place.walkMetres === null ? '' : ` (walk ${formatDistance(place.walkMetres, units)})`;
  const state = place.place.kit === undefined ? '' : `, ${place.place.kit} when last looked at`;
  return `${place.name}, ${straight}${walk}${state}`;
}
