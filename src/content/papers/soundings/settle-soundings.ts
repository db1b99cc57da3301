import { type Day, daysBetween, isDay } from '../../../domain/day.ts';
import { METRES_PER_FOOT, parseLength, parseSignedLength } from '../../../domain/length.ts';
import type { WaterMap } from '../../../domain/map.ts';
import type { Peg } from '../../../domain/peg.ts';
import type { LatLng } from '../../../domain/place.ts';
import { destination } from '../../../ground/geodesy/destination.ts';
import { type LocalPlane, localPlane } from '../../../ground/geodesy/local-plane.ts';
import { shorePlaces } from '../../../ground/shore-place.ts';
import type { Asker, Question } from '../questions.ts';
import type { Unread } from '../results/result-row.ts';
import { type DepthLog, isJump, type LoggedDepth, median } from './depth-log.ts';

export interface SoundingsWater {
  readonly id: string;
  readonly name: string;
  readonly shore: Pick<WaterMap, 'outline' | 'islands'> | null;
  readonly pegs: ReadonlyMap<string, Peg>;
  /** Days with a reading of the gauge. */
  readonly gaugeDays: readonly Day[];
}

/** A depth as the folder keeps it: its place is fixed, so that a peg that is moved later does not move what was plumbed. */
export interface SettledSounding {
  readonly water: string;
  readonly at: LatLng;
  readonly depthMetres: number;
  readonly day: Day;
  /** As written in the file; null leaves it to the gauge. */
  readonly level: string | null;
}

export interface SettledSoundings {
  readonly soundings: readonly SettledSounding[];
  readonly unread: readonly Unread[];
}

/** Of what lies in one square of this size, the middle depth stands for all. */
const CELL_METRES = 1;
/** A depth this far outside the water as drawn is not of it; a phone on a boat is out by as much. */
const OUTSIDE_METRES = 3;
/** A gauge reading holds for a sounding's day this many days either way, as the guide takes it. */
const GAUGE_DAYS = 7;

/** Makes soundings of the folder's form of a log of depths; what the log does not say is asked. */
export function settleSoundings(log: DepthLog, waters: readonly SoundingsWater[], asker: Asker): SettledSoundings {
  const { file } = log;
  const unread: Unread[] = [...log.unread];
  const count = (what: number, why: string): void => {
    if (what > 0) unread.push({ place: file, what: `${what} ${what === 1 ? 'depth' : 'depths'}`, why });
  };
  // Of a log without a depth nothing need be asked.
  if (log.depths.length === 0) return { soundings: [], unread };
  const water = waterOf(log, waters, asker);
  const day = log.depths.some((depth) => depth.day === null) ? asker.ask(dayQuestion(file)) : null;
  const unit = log.depths.some((depth) => depth.unit === null) ? asker.ask(unitQuestion(log)) : null;
  const offset = log.isBelowTransducer ? asker.ask(offsetQuestion(file)) : '0';
  if (water === null || offset === null) return { soundings: [], unread };
  const offsetMetres = parseLength(offset, 'm');
  const add = offsetMetres.ok ? offsetMetres.value : 0;
  const placed = log.depths.flatMap((depth) => {
    const at = positionOf(depth, water);
    const from = depth.day ?? day;
    const in_ = depth.unit ?? unit;
    if (from === null || in_ === null) return [];
    if (at === null) {
      count(1, `${water.name} has no peg ${'peg' in depth.at ? depth.at.peg : ''}`);
      return [];
    }
    return [
      { at, day: from, metres: depth.depth * (in_ === 'ft' ? METRES_PER_FOOT : 1) + add, isRun: !('peg' in depth.at) },
    ];
  });
  const jumps = isJump(placed.map(({ metres }) => metres));
  const steady = placed.filter(({ isRun }, index) => !isRun || jumps[index] !== true);
  count(
    placed.length - steady.length,
    'they jump away from those before and after them: a fish, weed or a lost bottom',
  );
  const shore = water.shore === null ? null : shorePlaces(water.shore);
  const inside = steady.filter(({ at }) => shore === null || shore(at).metresFromWater <= OUTSIDE_METRES);
  count(steady.length - inside.length, `more than ${OUTSIDE_METRES} m outside ${water.name} as drawn`);
  const thinned = thin(inside);
  count(
    inside.length - thinned.length,
    'another depth of the same square metre and day stands for them (the middle one)',
  );
  const days = [...new Set(thinned.map((sounding) => sounding.day))];
  const levels = new Map(days.map((one) => [one, levelOf(file, one, water, asker)]));
  return {
    soundings: thinned.map(({ at, metres, day: on }) => ({
      water: water.id,
      at,
      depthMetres: metres,
      day: on,
      level: levels.get(on) ?? null,
    })),
    unread,
  };
}

function positionOf({ at }: LoggedDepth, water: SoundingsWater): LatLng | null {
  if (!('peg' in at)) return at;
  const peg = water.pegs.get(at.peg);
  return peg === undefined ? null : destination(peg.at, peg.facingDegrees, at.distanceMetres);
}

interface Placed {
  readonly at: LatLng;
  readonly day: Day;
  readonly metres: number;
}

function thin(depths: readonly Placed[]): readonly Placed[] {
  const first = depths[0];
  if (first === undefined) return [];
  const plane: LocalPlane = localPlane(first.at);
  const cells = new Map<string, Placed[]>();
  for (const depth of depths) {
    const { x, y } = plane.toPlane(depth.at);
    const key = `${depth.day} ${Math.floor(x / CELL_METRES)} ${Math.floor(y / CELL_METRES)}`;
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [depth]);
    else cell.push(depth);
  }
  return [...cells.values()].map((cell) => {
    const middle = median(cell.map(({ metres }) => metres));
    const nearest = cell.reduce((a, b) => (Math.abs(b.metres - middle) < Math.abs(a.metres - middle) ? b : a));
    return { ...nearest, metres: middle };
  });
}

function waterOf(log: DepthLog, waters: readonly SoundingsWater[], asker: Asker): SoundingsWater | null {
  const holds = waters.map((water) => ({ water, count: countOn(log, water) })).sort((a, b) => b.count - a.count);
  const [first, second] = holds;
  if (first !== undefined && first.count > log.depths.length / 2 && (second === undefined || second.count === 0))
    return first.water;
  const id = asker.ask({
    scope: 'papers',
    of: log.file,
    key: 'water',
    ask: 'On which water were these plumbed?',
    evidence: holds.map(({ water, count }) => `${count} of ${log.depths.length} lie on ${water.name}`),
    choices: waters.map((water) => ({ value: water.id, words: water.name })),
    ...(first === undefined || first.count === 0 ? {} : { suggested: first.water.id }),
  });
  return waters.find((water) => water.id === id) ?? null;
}

function countOn(log: DepthLog, water: SoundingsWater): number {
  const shore = water.shore === null ? null : shorePlaces(water.shore);
  return log.depths.filter(({ at }) =>
    'peg' in at ? water.pegs.has(at.peg) : shore !== null && shore(at).metresFromWater <= OUTSIDE_METRES,
  ).length;
}

function levelOf(file: string, day: Day, water: SoundingsWater, asker: Asker): string | null {
  if (water.gaugeDays.some((read) => Math.abs(daysBetween(read, day)) <= GAUGE_DAYS)) return null;
  const answer = asker.ask({
    scope: 'papers',
    of: file,
    key: `level ${day}`,
    ask: `How high did ${water.name} stand above its datum on ${day} (such as 0.05 m or -0.1 m, or "unknown")?`,
    evidence: [`no reading of the gauge within ${GAUGE_DAYS} days`],
    choices: null,
    check: (text) =>
      text === 'unknown' || parseSignedLength(text, 'm').ok ? null : 'Expected a level such as 0.05 m, or unknown.',
    suggested: 'unknown',
  });
  return answer === null || answer === 'unknown' ? null : answer;
}

function dayQuestion(file: string): Question {
  return {
    scope: 'papers',
    of: file,
    key: 'day',
    ask: 'On which day were these plumbed (such as 2026-07-12)?',
    evidence: [],
    choices: null,
    check: (answer) => (isDay(answer) ? null : 'Expected a day such as 2026-07-12.'),
  };
}

function unitQuestion({ file, depths }: DepthLog): Question {
  const bare = depths.flatMap(({ depth, unit }) => (unit === null ? [depth] : []));
  return {
    scope: 'papers',
    of: file,
    key: 'unit',
    ask: 'Are these depths metres or feet?',
    evidence: [`from ${Math.min(...bare)} to ${Math.max(...bare)}`],
    choices: [
      { value: 'm', words: 'metres' },
      { value: 'ft', words: 'feet' },
    ],
  };
}

function offsetQuestion(file: string): Question {
  return {
    scope: 'papers',
    of: file,
    key: 'transducer',
    ask: 'How deep below the surface did the transducer hang (such as 0.2 m)?',
    evidence: ['the log gives depths below the transducer'],
    choices: null,
    check: (answer) => (parseLength(answer, 'm').ok ? null : 'Expected a length such as 0.2 m.'),
  };
}
