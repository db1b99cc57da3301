import { addDays, type Day, daysBetween, monthOf } from '../../src/domain/day.ts';
import type { Water } from '../../src/domain/map.ts';
import { type Peg, pegKey } from '../../src/domain/peg.ts';
import type { FishingEvent, Session, SessionStatus } from '../../src/domain/session.ts';
import { type Chance, seededChance } from './chance.ts';
import { FEATURES } from './ground/feature-words.ts';
import { placedAt, rounded, spotAt } from './ground/spot.ts';
import { type Angler, drawAnglers, turnOut } from './log/anglers.ts';
import { drawCyclicWalk } from './log/cyclic-walk.ts';
import { dnwChance } from './log/did-not-weigh.ts';
import { pegSum, type Truth } from './log/truth.ts';
import { type GeneratedVenue, ORIGIN } from './make-venue.ts';
import { demoSettings } from './settings.ts';

/** Standard deviations of the model's terms, on the log scale. */
export interface ModelSpread {
  readonly event: number;
  readonly angler: number;
  readonly peg: number;
  readonly feature: number;
  /** Scale of the cyclic walk: its covariance is this squared times the pseudo-inverse of the walk's structure. */
  readonly featureMonth: number;
  readonly residual: number;
}

/** A venue to be drawn from the rating model itself. */
export interface SimulationOptions {
  readonly seed: number;
  readonly waters: number;
  readonly pegs: number;
  readonly anglers: number;
  readonly events: number;
  /** Anglers an event; three quarters of the water's pegs if left out. */
  readonly field?: number;
  readonly features: number;
  readonly sd: ModelSpread;
  readonly dnwShare: number;
  /** Share of events that publish the top places only. */
  readonly frameOnlyShare: number;
  /** Share of frame-only events whose draw is known. */
  readonly drawKnownShare: number;
  readonly firstDay: Day;
  readonly lastDay: Day;
}

export const USUAL_SIMULATION: SimulationOptions = {
  seed: 1,
  waters: 2,
  pegs: 60,
  anglers: 120,
  events: 130,
  features: 6,
  sd: { event: 0.7, angler: 0.35, peg: 0.2, feature: 0.15, featureMonth: 0.25, residual: 0.6 },
  dnwShare: 0,
  frameOnlyShare: 0,
  drawKnownShare: 1,
  firstDay: '2023-11-22',
  lastDay: '2026-11-21',
};

/**
 * Draws a venue's pegs, features, effects and sessions exactly as the rating model says (design: event, angler, peg
 * and feature effects normal, the features' months a cyclic walk, normal scatter), every peg given by lot. Weights are
 * not rounded. DNW rows are mostly, not always, the low bags. No two features of a simulated venue stand on the same pegs.
 */
export function simulateFromModel(options: Partial<SimulationOptions> = {}): GeneratedVenue {
  const size = { ...USUAL_SIMULATION, ...options };
  const chance = seededChance(size.seed).apart('simulation');
  if (size.features > FEATURES.length) {
    throw new RangeError(`asked for ${size.features} features, the vocabulary has ${FEATURES.length}`);
  }
  const features = FEATURES.slice(0, size.features);
  const pegs = drawPegs(
    size,
    features.map((feature) => feature.id),
    chance.apart('pegs'),
  );
  const anglers = drawAnglers(size.anglers, size.sd.angler, chance.apart('anglers'));
  const effects = chance.apart('effects');
  const eventEffects: Record<string, number> = {};
  const truth: Truth = {
    mean: 2,
    events: eventEffects,
    anglers: Object.fromEntries(anglers.map((angler) => [angler.ref, angler.effect])),
    pegs: Object.fromEntries(pegs.map((peg) => [pegKey(peg.water, peg.peg), size.sd.peg * effects.normal()])),
    features: Object.fromEntries(features.map(({ id }) => [id, size.sd.feature * effects.normal()])),
    featureMonths: Object.fromEntries(
      features.map(({ id }) => [id, drawCyclicWalk(12, size.sd.featureMonth, effects)]),
    ),
    residualSd: size.sd.residual,
  };
  const events: FishingEvent[] = [];
  const sessions: Session[] = [];
  const fishing = chance.apart('fishing');
  for (let i = 0; i < size.events; i++) {
    const water = `water-${(i % size.waters) + 1}`;
    const day = addDays(size.firstDay, Math.floor((i * daysBetween(size.firstDay, size.lastDay)) / size.events));
    const id = `e-${String(i + 1).padStart(4, '0')}`;
    eventEffects[id] = size.sd.event * fishing.normal();
    const ofWater = pegs.filter((peg) => peg.water === water);
    const fished = fishModelEvent(id, day, water, ofWater, anglers, truth, size, fishing);
    events.push(fished.event);
    sessions.push(...fished.sessions);
  }
  const settings = { ...demoSettings(size.lastDay), features };
  const waters = Array.from({ length: size.waters }, (_, i) => roundWater(i));
  return {
    venue: { settings, waters, pegs, events, sessions, notices: [], rounds: [], soundings: [], gauge: [] },
    truth,
  };
}

function fishModelEvent(
  id: string,
  day: Day,
  water: string,
  pegs: readonly Peg[],
  anglers: readonly Angler[],
  truth: Truth,
  size: SimulationOptions,
  chance: Chance,
): { readonly event: FishingEvent; readonly sessions: Session[] } {
  const month = monthOf(day);
  const field = Math.min(size.field ?? Math.round(pegs.length * 0.75), pegs.length, anglers.length);
  const framePlaces = Math.max(3, Math.round(field / 5));
  const isFrameOnly = chance.happens(size.frameOnlyShare);
  const isDrawKnown = chance.happens(size.drawKnownShare);
  const present = turnOut(anglers, field, chance);
  const bags = chance
    .shuffled(pegs)
    .slice(0, field)
    .map((peg, i) => {
      const angler = present[i]!;
      const expected = truth.mean + truth.events[id]! + angler.effect + pegSum(truth, peg, month);
      return { peg, angler, weightGrams: 1000 * Math.exp(expected + truth.residualSd * chance.normal()) };
    })
    .sort((a, b) => b.weightGrams - a.weightGrams);
  const sessions: Session[] = [];
  bags.forEach(({ peg, angler, weightGrams }, rank) => {
    const shareBelow = 1 - (rank + 0.5) / bags.length;
    const isDnw = chance.happens(dnwChance(shareBelow, size.dnwShare));
    const isListed = !isFrameOnly || (rank < framePlaces && !isDnw);
    if (!isListed && !isDrawKnown) return;
    const status: SessionStatus = isListed ? (isDnw ? 'dnw' : 'weighed') : 'unlisted';
    sessions.push({
      event: id,
      water,
      peg: peg.peg,
      angler: angler.ref,
      status,
      ...(status === 'weighed' ? { weightGrams } : {}),
      parts: {},
    });
  });
  const event: FishingEvent = {
    id,
    day,
    water,
    kind: 'match',
    hours: 5,
    listing: isFrameOnly ? 'frame' : 'full',
    framePlaces,
    fished: field,
    conditions: { waterDegreesC: rounded(11.5 - 7.5 * Math.cos(((month - 0.8) * Math.PI) / 6) + chance.normal(), 1) },
  };
  return { event, sessions };
}

/** Pegs with features drawn at random: each feature on between a sixth and two fifths of the pegs. */
function drawPegs(size: SimulationOptions, features: readonly string[], chance: Chance): Peg[] {
  const place = placedAt(ORIGIN);
  const carriers = features.map((feature) => {
    const count = Math.max(2, Math.round(size.pegs * chance.between(0.17, 0.4)));
    const order = chance.shuffled(Array.from({ length: size.pegs }, (_, i) => i));
    return { feature, pegs: new Set(order.slice(0, count)) };
  });
  return Array.from({ length: size.pegs }, (_, i) => {
    const water = i % size.waters;
    const number = Math.floor(i / size.waters) + 1;
    const bearing = (number * 360 * size.waters) / size.pegs;
    return {
      water: `water-${water + 1}`,
      peg: String(number),
      at: place(spotAt({ x: water * WATER_APART_METRES, y: 0 }, bearing, ROUND_RADIUS_METRES + 1)),
      facingDegrees: Math.round(bearing + 180) % 360,
      features: carriers.filter((carrier) => carrier.pegs.has(i)).map((carrier) => carrier.feature),
      status: 'open',
      reach: [],
      limits: {},
      hazards: [],
      photos: [],
      notes: [],
      file: `pegs/water-${water + 1}/${number}.md`,
    };
  });
}

const ROUND_RADIUS_METRES = 60;
const WATER_APART_METRES = 250;

/** The round water a simulated venue's pegs stand at; the ratings ask nothing of it. */
function roundWater(index: number): Water {
  const place = placedAt(ORIGIN);
  const centre = { x: index * WATER_APART_METRES, y: 0 };
  return {
    id: `water-${index + 1}`,
    name: `Water ${index + 1}`,
    kind: 'simulated',
    datum: 'none',
    closeSeason: 'none',
    notesMarkdown: '',
    map: {
      outline: Array.from({ length: 60 }, (_, i) => place(spotAt(centre, 360 - i * 6, ROUND_RADIUS_METRES))),
      islands: [],
      overheadLines: [],
      paths: [],
      places: [],
      areas: [],
    },
  };
}
