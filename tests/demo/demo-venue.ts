import { addDays } from '../../src/domain/day.ts';
import { type Peg, pegKey } from '../../src/domain/peg.ts';
import { DEMO_CALENDAR } from './bank/bank-calendar.ts';
import { measuredLineDistance } from './bank/measured-lines.ts';
import { NOTICES } from './bank/notices.ts';
import { PLACED_HAZARDS, PLATFORM_CONDITIONS } from './bank/placed-hazards.ts';
import { walkRounds } from './bank/rounds.ts';
import { seededChance } from './chance.ts';
import { demoDrawings, type FiledDrawing } from './drawings/demo-drawings.ts';
import { drawEelback } from './ground/eelback.ts';
import { drawKilnPool } from './ground/kiln-pool.ts';
import { type Plumbing, plumb } from './ground/soundings.ts';
import { placedAt } from './ground/spot.ts';
import { drawTallymanLake } from './ground/tallyman-lake.ts';
import { waterOf } from './ground/water-map.ts';
import { livedIn } from './history.ts';
import { readGauge } from './log/gauge.ts';
import { noteHours } from './log/hours.ts';
import { makeLog } from './log/make-log.ts';
import { drawWeather } from './log/weather.ts';
import { type GeneratedVenue, groundOf, ORIGIN, type WaterGround } from './make-venue.ts';
import { readNotes } from './notes/read-notes.ts';
import { demoSettings } from './settings.ts';

const SEED = 20261121;
const FIRST_DAY = '2023-11-25';
export const GUIDE_DAY = '2026-11-21';

const PLUMBING_DAYS = { west: '2024-07-09', east: '2025-03-18', pole: '2025-10-11' } as const;

/** How each water was plumbed: the two pits by boat, the match lake along a few lines and not past the middle. */
const PLUMBING: Readonly<Record<string, Plumbing>> = {
  'kiln-pool': { gridMetres: 6.6, where: () => true, poleMetres: [2.5, 13], days: PLUMBING_DAYS },
  eelback: { gridMetres: 5, where: () => true, poleMetres: [2, 4.5, 11], days: PLUMBING_DAYS },
  'tallyman-lake': { gridMetres: 9, where: (spot) => spot.x > -176, poleMetres: [4], days: PLUMBING_DAYS },
};

/** The demo venue, its truth, and its pictures. */
export interface DemoVenue extends GeneratedVenue {
  readonly drawings: readonly FiledDrawing[];
}

/** Makes the demo venue: Osierholt's three waters, with the truth its log was drawn from. */
export function demoVenue(): DemoVenue {
  const chance = seededChance(SEED);
  const settings = demoSettings(GUIDE_DAY);
  const place = placedAt(ORIGIN);
  const drawn = [
    drawEelback(chance.apart('eelback'), 38),
    drawKilnPool(chance.apart('kiln-pool'), 34),
    drawTallymanLake(chance.apart('tallyman-lake'), 24),
  ];
  const climates = Object.fromEntries(drawn.map((water) => [water.id, water.climate]));
  const weather = drawWeather(addDays(FIRST_DAY, -30), GUIDE_DAY, climates, chance.apart('weather'));
  const ground = drawn.map((water) =>
    groundOf(water, settings, place, DEMO_CALENDAR, chance.apart(`ground ${water.id}`)),
  );
  const drawings = demoDrawings(ground, chance.apart('drawings'));
  const walked = walkRounds(
    ground.flatMap((water) => withHandwork(water, drawings)),
    DEMO_CALENDAR,
    settings.nestingMonths,
    weather,
    chance.apart('rounds'),
  );
  const log = makeLog(
    walked.pegs,
    {
      calendar: {
        firstDay: FIRST_DAY,
        lastDay: GUIDE_DAY,
        events: 136,
        waters: drawn.map((water) => water.id),
        chosenShare: 0.08,
        frameOnlyShare: 0.1,
        fieldShare: [0.78, 1],
      },
      anglers: 150,
      spread: { event: 0.35, angler: 0.3, peg: 0.14, residual: 0.6 },
      habits: {
        dnwShare: 0.1,
        unknownAnglerShare: 0.04,
        tackleShare: 0.55,
        partsShare: 0.88,
        absentShare: 0.008,
        disqualifiedShare: 0.003,
      },
    },
    weather,
    chance.apart('log'),
  );
  const venue = {
    settings,
    waters: drawn.map((water) => waterOf(water, place)),
    pegs: walked.pegs,
    events: log.events,
    sessions: log.sessions,
    notices: [...NOTICES].sort((a, b) => (a.id < b.id ? -1 : 1)),
    rounds: walked.rounds,
    soundings: ground.flatMap(({ water, stands }) =>
      plumb(water, stands, PLUMBING[water.id]!, weather, place, chance.apart(`plumb ${water.id}`)),
    ),
    gauge: drawn.flatMap((water) =>
      readGauge(water.id, FIRST_DAY, GUIDE_DAY, weather, chance.apart(`gauge ${water.id}`)),
    ),
  };
  const lived = livedIn(venue, log.truth);
  const hours = noteHours(lived.venue, chance.apart('hours'));
  return { ...lived, venue: { ...lived.venue, hours }, drawings };
}

/** Puts to a water's records what no drawing tells: notes, hazards found, distances taped. */
function withHandwork(ground: WaterGround, drawings: readonly FiledDrawing[]): Peg[] {
  const notes = readNotes(ground.water.id);
  return ground.pegs.map((peg, i) => {
    const key = pegKey(peg.water, peg.peg);
    const written = notes.get(peg.peg);
    const condition = PLATFORM_CONDITIONS[key];
    const measured = measuredLineDistance(key, ground.stands[i]!.clearance.platformMetres);
    return {
      ...peg,
      ...(written?.where === undefined ? {} : { where: written.where }),
      ...(condition === undefined ? {} : { platform: { kind: 'timber', ...peg.platform, condition } }),
      notes: written?.notes ?? [],
      photos: drawings
        .filter((drawing) => drawing.peg === key)
        .map(({ file, alt }) => ({ file, alt, credit: 'Drawn for this guide' })),
      hazards: [...peg.hazards, ...(PLACED_HAZARDS[key] ?? [])],
      ...(measured === undefined ? {} : { measuredLineDistance: measured }),
    };
  });
}
