import { addDays, type Day, monthOf } from '../../src/domain/day.ts';
import { type Peg, pegKey } from '../../src/domain/peg.ts';
import type { LatLng } from '../../src/domain/place.ts';
import type { BankRound } from '../../src/domain/round.ts';
import type { Session } from '../../src/domain/session.ts';
import { standId } from '../../src/domain/stand.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { rounded } from './ground/spot.ts';
import { GRAMS_PER_OUNCE } from './log/bag-parts.ts';
import type { Truth } from './log/truth.ts';

/**
 * What happened to Osierholt in the three years of its log. The generator draws the waters of today; this turns the years
 * before into those of a venue that changed, in its records and in what was caught.
 */
const LAKE = 'tallyman-lake';

/** The bank under Tallyman 6 slipped that winter; a new peg 4 was built, and 4 and 5 became 5 and 6. */
export const RENUMBERED: Day = '2025-03-01';
const NEW_PEG = '4';
const RENUMBERED_PEGS: Readonly<Record<string, string>> = { '5': '4', '6': '5' };
const RETIRED_NUMBER = '6';
const RETIRED_BETWEEN = ['6', '7'] as const;

/** The tail of Eelback silted up before a peg that is not in the log. */
const SILTED = {
  water: 'eelback',
  number: '39',
  beside: '38',
  from: '2024-02-01',
  why: 'The tail silted up in front of it',
};

/** The platform of Tallyman 15 was set elsewhere. */
const MOVED = { peg: '15', on: '2025-09-06', metres: 8, wasFacingTurn: 90 } as const;

/** Fish put into Tallyman, and what they were worth to its bags since. */
const STOCKED = { on: '2025-03-14', what: 'F1s of about 6 oz', kilograms: 180, logGain: 0.15 } as const;

/** The lilies in the tail of Eelback were raked out. */
const CUT = {
  water: 'eelback',
  pegs: ['36', '37'],
  feature: 'lilies',
  area: 'eelback-lilies',
  lastDay: '2025-02-22',
} as const;

/** Carp were weighed apart from then on; before, silvers and the whole bag. */
export const CARP_APART_SINCE: Day = '2024-03-02';

/** The venue as its years made it, and what its log is drawn from since. */
export function livedIn(venue: Venue, truth: Truth): { readonly venue: Venue; readonly truth: Truth } {
  const days = new Map(venue.events.map(({ id, day }) => [id, day]));
  const dayOf = ({ event }: Session) => days.get(event)!;
  const retired = retiredStand(venue.pegs);
  const lived = {
    ...venue,
    settings: {
      ...venue.settings,
      bagParts: venue.settings.bagParts.map((part) =>
        part.id === 'carp' ? { ...part, since: CARP_APART_SINCE } : part,
      ),
    },
    waters: venue.waters.map((water) => ({
      ...water,
      ...(water.id === LAKE ? { stocked: [{ on: STOCKED.on, what: STOCKED.what, kilograms: STOCKED.kilograms }] } : {}),
      ...(water.id === CUT.water
        ? { map: { ...water.map, areas: water.map.areas.filter(({ id }) => id !== CUT.area) } }
        : {}),
    })),
    pegs: venue.pegs.map(pegWithHistory),
    retired: [siltedStand(venue.pegs), retired],
    sessions: venue.sessions.map((session) =>
      underItsNumber(
        withoutCarp(scaled(session, logChange(session, dayOf(session), truth)), dayOf(session)),
        dayOf(session),
        retired,
      ),
    ),
    rounds: venue.rounds.map((round) => roundOf(round, retired)),
  };
  return { venue: lived, truth: truthOf(lived, truth, retired) };
}

/** The retired stand has the effect of the one its log was drawn at; a stocked water's days are better by what it gained. */
function truthOf({ events }: Venue, truth: Truth, retired: Peg): Truth {
  const stocked = events.filter(({ water, day }) => water === LAKE && day >= STOCKED.on);
  return {
    ...truth,
    pegs: { ...truth.pegs, [pegKey(LAKE, retired.peg)]: truth.pegs[pegKey(LAKE, NEW_PEG)]! },
    events: {
      ...truth.events,
      ...Object.fromEntries(stocked.map(({ id }) => [id, truth.events[id]! + STOCKED.logGain])),
    },
  };
}

function pegWithHistory(peg: Peg): Peg {
  const was = peg.water === LAKE ? RENUMBERED_PEGS[peg.peg] : undefined;
  const since = peg.water === LAKE && peg.peg === NEW_PEG ? RENUMBERED : undefined;
  const isCut = peg.water === CUT.water && (CUT.pegs as readonly string[]).includes(peg.peg);
  return {
    ...peg,
    id: standId({ water: peg.water, peg: was ?? peg.peg, ...(since === undefined ? {} : { since }) }),
    ...(since === undefined ? {} : { since }),
    ...(was === undefined ? {} : { was: [{ peg: was, until: addDays(RENUMBERED, -1) }] }),
    ...(isCut ? cutLilies(peg) : {}),
    ...(peg.water === LAKE && peg.peg === MOVED.peg ? { moved: [moveOf(peg)] } : {}),
  };
}

function cutLilies({ features, reach, where }: Peg): Partial<Peg> {
  const until = CUT.lastDay;
  return {
    ...(where === undefined ? {} : { where: where.replace('the tail lilies', 'the tail') }),
    features: features.filter((id) => id !== CUT.feature),
    datedFeatures: features.map((id) => (id === CUT.feature ? { id, until } : { id })),
    reach: reach.filter(({ what }) => what !== CUT.feature),
    datedReach: reach.map((claim) => (claim.what === CUT.feature ? { ...claim, until } : claim)),
  };
}

function moveOf({ at, facingDegrees }: Peg) {
  const wasAt = offset(at, facingDegrees + MOVED.wasFacingTurn, MOVED.metres);
  return { on: MOVED.on, metres: MOVED.metres, newGround: true, wasAt, wasFacingDegrees: facingDegrees };
}

/** A place some metres away; a hundred-thousandth of a degree of latitude is 1.11 m. */
function offset({ lat, lng }: LatLng, bearingDegrees: number, metres: number): LatLng {
  const bearing = (bearingDegrees * Math.PI) / 180;
  const degrees = metres / 111_320;
  return {
    lat: rounded(lat + degrees * Math.cos(bearing), 6),
    lng: rounded(lng + (degrees * Math.sin(bearing)) / Math.cos((lat * Math.PI) / 180), 6),
  };
}

/** The stand between two of today's pegs that is fished no more. Its log is that of the stand built for it. */
function retiredStand(pegs: readonly Peg[]): Peg {
  const find = (number: string) => pegs.find(({ water, peg }) => water === LAKE && peg === number)!;
  const [left, right] = [find(RETIRED_BETWEEN[0]), find(RETIRED_BETWEEN[1])];
  const id = standId({ water: LAKE, peg: RETIRED_NUMBER });
  return {
    water: LAKE,
    peg: id,
    id,
    was: [{ peg: RETIRED_NUMBER, until: addDays(RENUMBERED, -1) }],
    retired: { from: RENUMBERED, why: 'The bank under it slipped' },
    at: {
      lat: rounded((left.at.lat + right.at.lat) / 2, 6),
      lng: rounded((left.at.lng + right.at.lng) / 2, 6),
    },
    facingDegrees: left.facingDegrees,
    features: find(NEW_PEG).features,
    status: 'closed',
    statusReason: 'The bank slipped',
    statusSince: RENUMBERED,
    reach: [],
    limits: {},
    hazards: [],
    photos: [],
    notes: [],
    file: `pegs/${LAKE}/${id}.md`,
  };
}

function siltedStand(pegs: readonly Peg[]): Peg {
  const beside = pegs.find(({ water, peg }) => water === SILTED.water && peg === SILTED.beside)!;
  const id = standId({ water: SILTED.water, peg: SILTED.number });
  return {
    water: SILTED.water,
    peg: id,
    id,
    was: [{ peg: SILTED.number, until: addDays(SILTED.from, -1) }],
    retired: { from: SILTED.from, why: SILTED.why },
    at: offset(beside.at, beside.facingDegrees + 90, 9),
    facingDegrees: beside.facingDegrees,
    features: [],
    status: 'open',
    reach: [],
    limits: {},
    hazards: [],
    photos: [],
    notes: [],
    file: `pegs/${SILTED.water}/${id}.md`,
  };
}

/** What the years did to a bag, on the log scale. */
function logChange({ water, peg }: Session, day: Day, truth: Truth): number {
  if (water === LAKE) return day >= STOCKED.on ? STOCKED.logGain : 0;
  if (water !== CUT.water || !(CUT.pegs as readonly string[]).includes(peg) || day <= CUT.lastDay) return 0;
  return -((truth.features[CUT.feature] ?? 0) + (truth.featureMonths[CUT.feature]?.[monthOf(day) - 1] ?? 0));
}

/** A bag made larger or smaller as a whole, still in whole ounces, each part a share of it as before. */
function scaled(session: Session, logFactor: number): Session {
  if (logFactor === 0 || session.weightGrams === undefined) return session;
  const ounces = (grams: number) => Math.round((grams * Math.exp(logFactor)) / GRAMS_PER_OUNCE) * GRAMS_PER_OUNCE;
  const parts = Object.fromEntries(
    Object.entries(session.parts).map(([id, part]) => [
      id,
      part.weightGrams === undefined ? part : { ...part, weightGrams: ounces(part.weightGrams) },
    ]),
  );
  const weighed = Object.values(parts).flatMap(({ weightGrams }) => weightGrams ?? []);
  const sum = weighed.reduce((total, grams) => total + grams, 0);
  return { ...session, parts, weightGrams: weighed.length > 0 ? sum : ounces(session.weightGrams) };
}

function withoutCarp(session: Session, day: Day): Session {
  if (day >= CARP_APART_SINCE || session.parts.carp === undefined) return session;
  const { carp: _, ...parts } = session.parts;
  return { ...session, parts };
}

/** The number a post of today carried on a day, and whose sheet it is. */
function numberOn(
  water: string,
  peg: string,
  day: Day,
  retired: Peg,
): { readonly stand: string; readonly painted: string } {
  if (water !== LAKE || day >= RENUMBERED) return { stand: peg, painted: peg };
  if (peg === NEW_PEG) return { stand: retired.peg, painted: RETIRED_NUMBER };
  return { stand: peg, painted: RENUMBERED_PEGS[peg] ?? peg };
}

function underItsNumber(session: Session, day: Day, retired: Peg): Session {
  const { stand, painted } = numberOn(session.water, session.peg, day, retired);
  return stand === painted ? session : { ...session, peg: stand, painted };
}

function roundOf(round: BankRound, retired: Peg): BankRound {
  return {
    ...round,
    entries: round.entries.map((entry) => {
      if (entry.peg === undefined) return entry;
      const { stand } = numberOn(entry.water, entry.peg, entry.day ?? round.day, retired);
      return stand === entry.peg ? entry : { ...entry, peg: stand };
    }),
  };
}
