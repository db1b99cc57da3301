import { addDays, type Day, daysBetween, monthOf } from '../../src/domain/day.ts';
import type { Water } from '../../src/domain/map.ts';
import { type Peg, pegKey } from '../../src/domain/peg.ts';
import type { FishingEvent, Session, SessionStatus } from '../../src/domain/session.ts';
import { featuresOn } from '../../src/domain/stand.ts';
import { normalCdf } from '../../src/ratings/engine/normal-cdf.ts';
import { normalQuantile } from '../../src/ratings/engine/normal-quantile.ts';
import { type Chance, seededChance } from './chance.ts';
import { FEATURES } from './ground/feature-words.ts';
import { placedAt, rounded, spotAt } from './ground/spot.ts';
import { type Angler, drawAnglers, turnOut } from './log/anglers.ts';
import { drawCyclicWalk } from './log/cyclic-walk.ts';
import { dnwChance } from './log/did-not-weigh.ts';
import { drawRevealed, type Revealed } from './log/revealed.ts';
import { pegSum, type Truth } from './log/truth.ts';
import { carpOf } from './log/two-humped.ts';
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
  /**
   * Who does not weigh: mostly the low bags, anybody, the very lowest, or those below a line about the event's own middle,
   * blurred by half.
   */
  readonly dnwBy: 'mostly low' | 'anybody' | 'lowest' | 'line';
  /** How far a peg's effect lies in one twelvemonth from another; what it is worth now is its last. */
  readonly pegYear: number;
  /** What the features' months are drawn from: the model's walk, one smooth wave a year, or months that have nothing to do with one another. */
  readonly seasons: 'walk' | 'wave' | 'rough';
  /** Degrees of freedom of Student's t for the scatter of bags, at the same standard deviation; normal if 0. */
  readonly tails: number;
  /** Half of the pegs with the first feature lose it half-way through the log, and their records say so. */
  readonly isCut: boolean;
  /** What half-way through the log a stocking of the first water adds to its level, on the log scale. */
  readonly stocking: number;
  /** How far a water's level moves from one twelvemonth to the next. */
  readonly waterYear: number;
  /** What the two nearest pegs on either side left empty add to a bag, on the log scale; half of that for two of the four. */
  readonly room: number;
  /**
   * What 200 m of open water along the wind add to a bag over 5 m, on the log scale, by the logarithm of the metres; twice that in a
   * fresh wind. Null where the log tells no wind.
   */
  readonly wind: number | null;
  /** What an edge of 1.8 m adds over one of 0.3 m in clear water, and takes away in coloured. Null where the log tells no colour. */
  readonly colour: number | null;
  /** What 4 m at 6 m out add over 0.5 m in winter, and take away in summer. Null where no peg is plumbed. */
  readonly depth: number | null;
  /** Bags hold carp as well, in ones and twos or not at all: see `two-humped.ts`. */
  readonly isTwoHumped: boolean;
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
  dnwBy: 'mostly low',
  pegYear: 0,
  seasons: 'walk',
  tails: 0,
  isCut: false,
  stocking: 0,
  waterYear: 0,
  room: 0,
  wind: null,
  colour: null,
  depth: null,
  isTwoHumped: false,
  firstDay: '2023-11-22',
  lastDay: '2026-11-21',
};

/** A generated venue, and what the map of it tells of its pegs. */
export interface SimulatedVenue extends GeneratedVenue {
  readonly ground: Revealed['ground'];
  readonly revealed: Revealed;
}

/**
 * Draws a venue's pegs, features, effects and sessions exactly as the rating model says (design: event, angler, peg
 * and feature effects normal, the features' months a cyclic walk, normal scatter), every peg given by lot. Weights are
 * not rounded. DNW rows are mostly, not always, the low bags. No two features of a simulated venue stand on the same pegs.
 */
export function simulateFromModel(options: Partial<SimulationOptions> = {}): SimulatedVenue {
  const size = { ...USUAL_SIMULATION, ...options };
  const chance = seededChance(size.seed).apart('simulation');
  if (size.features > FEATURES.length) {
    throw new RangeError(`asked for ${size.features} features, the vocabulary has ${FEATURES.length}`);
  }
  const features = FEATURES.slice(0, size.features);
  const drawn = drawPegs(
    size,
    features.map((feature) => feature.id),
    chance.apart('pegs'),
  );
  const pegs = size.isCut ? withCut(drawn, features[0]!.id, middleDay(size)) : drawn;
  const levelOn = drawLevels(size, chance.apart('levels'));
  const anglers = drawAnglers(size.anglers, size.sd.angler, chance.apart('anglers'));
  const effects = chance.apart('effects');
  const eventEffects: Record<string, number> = {};
  const truth: Truth = {
    mean: 2,
    events: eventEffects,
    anglers: Object.fromEntries(anglers.map((angler) => [angler.ref, angler.effect])),
    pegs: Object.fromEntries(pegs.map((peg) => [pegKey(peg.water, peg.peg), size.sd.peg * effects.normal()])),
    features: Object.fromEntries(features.map(({ id }) => [id, size.sd.feature * effects.normal()])),
    featureMonths: Object.fromEntries(features.map(({ id }) => [id, drawSeason(size, effects)])),
    residualSd: size.sd.residual,
    waters: Object.fromEntries(pegs.map(({ water }) => [water, levelOn(water, size.lastDay)])),
  };
  const apart = drawPegYears(size, truth, chance.apart('peg years'));
  const events: FishingEvent[] = [];
  const sessions: Session[] = [];
  const fishing = chance.apart('fishing');
  const revealed = drawRevealed(size, pegs, chance.apart('revealed'));
  for (let i = 0; i < size.events; i++) {
    const water = `water-${(i % size.waters) + 1}`;
    const day = addDays(size.firstDay, Math.floor((i * daysBetween(size.firstDay, size.lastDay)) / size.events));
    const id = `e-${String(i + 1).padStart(4, '0')}`;
    eventEffects[id] = size.sd.event * fishing.normal();
    const ofDay = pegs.filter((peg) => peg.water === water).map((peg) => ({ ...peg, features: featuresOn(peg, day) }));
    const dayTruth = { ...truth, mean: truth.mean + levelOn(water, day) };
    const fished = fishModelEvent(id, day, water, ofDay, anglers, dayTruth, apart, size, fishing, revealed);
    events.push(fished.event);
    sessions.push(...fished.sessions);
  }
  const settings = { ...demoSettings(size.lastDay), features };
  const waters = Array.from({ length: size.waters }, (_, i) => ({
    ...roundWater(i),
    ...(size.stocking !== 0 && i === 0 ? { stocked: [{ on: middleDay(size), what: 'fish' }] } : {}),
  }));
  return {
    venue: { settings, waters, pegs, events, sessions, notices: [], rounds: [], soundings: [], gauge: [] },
    truth,
    ground: revealed.ground,
    revealed,
  };
}

function fishModelEvent(
  id: string,
  day: Day,
  water: string,
  pegs: readonly Peg[],
  anglers: readonly Angler[],
  truth: Truth,
  apart: PegYears,
  size: SimulationOptions,
  chance: Chance,
  revealed: Revealed,
): { readonly event: FishingEvent; readonly sessions: Session[] } {
  const month = monthOf(day);
  const field = Math.min(size.field ?? Math.round(pegs.length * 0.75), pegs.length, anglers.length);
  const framePlaces = Math.max(3, Math.round(field / 5));
  const isFrameOnly = chance.happens(size.frameOnlyShare);
  const isDrawKnown = chance.happens(size.drawKnownShare);
  const present = turnOut(anglers, field, chance);
  const drawn = chance.shuffled(pegs).slice(0, field);
  const today = revealed.on(day, drawn);
  const bags = drawn
    .map((peg, i) => {
      const angler = present[i]!;
      const expected =
        truth.mean + truth.events[id]! + angler.effect + pegSum(truth, peg, month) + apart(peg, day) + today.adds(peg);
      return { peg, angler, weightGrams: 1000 * Math.exp(expected + truth.residualSd * drawScatter(size, chance)) };
    })
    .sort((a, b) => b.weightGrams - a.weightGrams);
  const sessions: Session[] = [];
  const middle = Math.log(bags[Math.floor(bags.length / 2)]!.weightGrams / 1000);
  bags.forEach(({ peg, angler, weightGrams }, rank) => {
    const shareBelow = 1 - (rank + 0.5) / bags.length;
    const isDnw = chance.happens(chanceNotToWeigh(size, shareBelow, Math.log(weightGrams / 1000) - middle));
    const carpGrams = size.isTwoHumped ? carpOf(truth, id, angler.effect, pegSum(truth, peg, month), chance) : null;
    const isListed = !isFrameOnly || (rank < framePlaces && !isDnw);
    if (!isListed && !isDrawKnown) return;
    const status: SessionStatus = isListed ? (isDnw ? 'dnw' : 'weighed') : 'unlisted';
    sessions.push({
      event: id,
      water,
      peg: peg.peg,
      angler: angler.ref,
      status,
      ...(status === 'weighed' ? { weightGrams: weightGrams + (carpGrams ?? 0) } : {}),
      parts: carpGrams === null || status !== 'weighed' ? {} : { carp: { weightGrams: carpGrams } },
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
    conditions: {
      ...today.wind,
      waterDegreesC: rounded(11.5 - 7.5 * Math.cos(((month - 0.8) * Math.PI) / 6) + chance.normal(), 1),
    },
  };
  return { event, sessions };
}

function middleDay({ firstDay, lastDay }: SimulationOptions): Day {
  return addDays(firstDay, Math.floor(daysBetween(firstDay, lastDay) / 2));
}

/** Every other peg with a feature loses it after a day. */
function withCut(pegs: readonly Peg[], feature: string, last: Day): Peg[] {
  let carriers = 0;
  return pegs.map((peg) => {
    if (!peg.features.includes(feature) || carriers++ % 2 === 1) return peg;
    return {
      ...peg,
      features: peg.features.filter((id) => id !== feature),
      datedFeatures: peg.features.map((id) => (id === feature ? { id, until: last } : { id })),
    };
  });
}

/** How far a water's days lie from the mean on a day: a stocking, and a walk over twelvemonths that ends on the last day. */
function drawLevels(size: SimulationOptions, chance: Chance): (water: string, day: Day) => number {
  const { stocking, waterYear, waters, firstDay, lastDay } = size;
  const years = Math.floor(daysBetween(firstDay, lastDay) / 365.25) + 1;
  const walks = Array.from({ length: waterYear === 0 ? 0 : waters }, () => {
    let level = 0;
    return Array.from({ length: years }, () => {
      level += waterYear * chance.normal();
      return level;
    });
  });
  return (water, day) => {
    const step = water === 'water-1' && day >= middleDay(size) ? stocking : 0;
    const walk = walks[Number(water.slice('water-'.length)) - 1];
    return step + (walk?.[years - 1 - Math.floor(daysBetween(day, lastDay) / 365.25)] ?? 0);
  };
}

/** How far a peg's effect lay, on a day of the log, from what it is now. */
type PegYears = (peg: Peg, day: Day) => number;

/** Draws every peg's twelvemonths, counted back from the last day, and adds the last of them to what the peg is worth now. */
function drawPegYears({ pegYear, firstDay, lastDay }: SimulationOptions, truth: Truth, chance: Chance): PegYears {
  if (pegYear === 0) return () => 0;
  const yearOf = (day: Day) => Math.floor(daysBetween(day, lastDay) / 365.25);
  const years = new Map(
    Object.keys(truth.pegs).map((key) => [
      key,
      Array.from({ length: yearOf(firstDay) + 1 }, () => pegYear * chance.normal()),
    ]),
  );
  const pegs = truth.pegs as Record<string, number>;
  for (const [key, [now]] of years) pegs[key] = pegs[key]! + now!;
  return (peg, day) => {
    const ofPeg = years.get(pegKey(peg.water, peg.peg))!;
    return ofPeg[yearOf(day)]! - ofPeg[0]!;
  };
}

function drawSeason({ seasons, sd }: SimulationOptions, chance: Chance): number[] {
  if (seasons === 'walk') return drawCyclicWalk(12, sd.featureMonth, chance);
  if (seasons === 'wave') {
    const [cosine, sine] = [sd.featureMonth * 1.2 * chance.normal(), sd.featureMonth * 1.2 * chance.normal()];
    return Array.from(
      { length: 12 },
      (_, m) => cosine * Math.cos((m * Math.PI) / 6) + sine * Math.sin((m * Math.PI) / 6),
    );
  }
  const months = Array.from({ length: 12 }, () => sd.featureMonth * chance.normal());
  const mean = months.reduce((sum, value) => sum + value, 0) / 12;
  return months.map((value) => value - mean);
}

/** Scatter of standard deviation 1: normal, or Student's t brought to it. */
function drawScatter({ tails }: SimulationOptions, chance: Chance): number {
  const normal = chance.normal();
  if (tails === 0) return normal;
  let squares = 0;
  for (let i = 0; i < tails; i++) squares += chance.normal() ** 2;
  return (normal / Math.sqrt(squares / tails)) * Math.sqrt((tails - 2) / tails);
}

function chanceNotToWeigh({ dnwBy, dnwShare, sd }: SimulationOptions, shareBelow: number, overMiddle: number): number {
  if (dnwShare === 0) return 0;
  switch (dnwBy) {
    case 'mostly low':
      return dnwChance(shareBelow, dnwShare);
    case 'anybody':
      return dnwShare;
    case 'lowest':
      return shareBelow < dnwShare ? 1 : 0;
    case 'line': {
      // Bags of a match spread by angler, peg and luck together; the blur widens that by half of the scatter.
      const spread = Math.hypot(sd.residual, sd.angler, sd.peg, sd.residual / 2);
      return normalCdf((spread * normalQuantile(dnwShare) - overMiddle) / (sd.residual / 2));
    }
  }
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
