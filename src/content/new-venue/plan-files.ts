import { capitalised } from '../../domain/capitalised.ts';
import { type Day, yearOf } from '../../domain/day.ts';
import { firstSettings } from '../first-venue.ts';
import { waterSlug } from '../papers/places/settle-places.ts';
import { typed } from '../typed-command.ts';
import { sketchWater } from './sketch-water.ts';
import type { LinesPlan, VenuePlan, WaterPlan } from './venue-plan.ts';

/** Words every angler uses for a part, and the fish they mean by it. */
const SPECIES: Readonly<Record<string, string>> = {
  silvers: 'roach, rudd, skimmer',
  carp: 'common carp, mirror carp',
  skimmers: 'skimmer, bream',
  bream: 'bream',
  tench: 'tench',
};

/**
 * The files of a new venue: it checks and builds, its waters are sketches and say so, and every figure a club has not given
 * is left out or marked.
 */
export function planFiles(plan: VenuePlan): ReadonlyMap<string, string> {
  const year = yearOf(plan.day);
  const partColumns = plan.parts.map(partId).flatMap((id) => [`${id}_weight`, `${id}_count`]);
  return new Map([
    ['venue.md', firstSettings(plan.day, settingsOf(plan))],
    ...plan.waters.flatMap((water, index) => [...waterFiles(water, index, plan.lines, plan.day)]),
    [
      `sessions/${year}/events.csv`,
      'event,date,water,kind,hours,listing,frame_places,fished,air_temperature,water_temperature,wind_from,wind_speed,sky\n',
    ],
    [
      `sessions/${year}/sessions.csv`,
      `${['event', 'section', 'peg', 'angler', 'status', 'weight', ...partColumns, 'spot', 'method', 'bait', 'lines'].join(',')}\n`,
    ],
  ]);
}

/** The files of a water that is new to a venue: a record, a sketch of its map, its pegs and its empty logs. */
export function waterFiles(water: WaterPlan, index: number, lines: LinesPlan, day: Day): ReadonlyMap<string, string> {
  const sketch = sketchWater(water.pegs, index);
  const position = ({ lat, lng }: { lat: number; lng: number }) => [lng, lat];
  const features = [feature({ kind: 'outline' }, 'Polygon', [[...sketch.outline, sketch.outline[0]!].map(position)])];
  return new Map([
    [
      `waters/${water.id}.md`,
      `---\n# The map beside this file is a plain box until you import one: ${typed('import places FILE')}\nname: ${JSON.stringify(water.name)}\nkind: match lake # in your own words\ndatum: "not fixed yet" # what level zero is: top of the monk sill\nclose-season: unknown # none, statutory, club or unknown\n---\n`,
    ],
    [`waters/${water.id}.geojson`, `{"type":"FeatureCollection","features":[\n${features.join(',\n')}\n]}\n`],
    ...sketch.pegs.map(({ peg, at }): [string, string] => [
      `pegs/${water.id}/${peg}.md`,
      pegRecord(water.id, peg, `{ lat: ${at.lat}, lng: ${at.lng}, placeholder: true }`, lines, day),
    ]),
    [`soundings/${water.id}.csv`, 'lat,lng,peg,distance,bearing,depth,date,level\n'],
    [`gauge/${water.id}.csv`, 'date,level,water_temperature\n'],
  ]);
}

/** Why pegs are closed where lines are known and not drawn. */
export const LINE_NOT_DRAWN = 'An overhead line is known here and is not on the map yet.';

/** A record that says of a peg no more than is known: what it faces is left to the shore until somebody has looked. */
export function pegRecord(
  water: string,
  peg: string,
  position: string,
  lines: LinesPlan,
  day: Day,
  facing: string | null = null,
): string {
  const status =
    lines.state === 'known' ? `status: closed\nstatus-reason: ${LINE_NOT_DRAWN}\nstatus-since: ${day}` : 'status: open';
  return `---\npeg: "${peg}"\nwater: ${water}\nposition: ${position}${facing === null ? '' : `\nfacing: ${facing}`}\n${status}\n---\n`;
}

/** The word of a bag part, as it stands in names of columns: small letters and digits, a letter first. */
export function partId(part: string): string {
  const letters = waterSlug(part).replaceAll('-', '').slice(0, 20);
  return /^[a-z]/.test(letters) ? letters : `p${letters}`.slice(0, 20);
}

function feature(properties: object, type: string, coordinates: unknown): string {
  return JSON.stringify({ type: 'Feature', properties, geometry: { type, coordinates } });
}

function settingsOf({ name, club, lengths, weights, parts, lines }: VenuePlan) {
  return {
    name: JSON.stringify(name),
    club: JSON.stringify(club),
    units: `{ length: ${lengths}, weight: ${weights} }`,
    scaleDivision: weights === 'kg' ? '0.01 kg' : '1 oz',
    bagParts: parts.map((part) => {
      const id = partId(part);
      const species = SPECIES[id] ?? JSON.stringify(part.toLowerCase());
      return `  - { id: ${id}, name: ${JSON.stringify(capitalised(part))}, species: [${species}] }`;
    }),
    linesSurveyed:
      lines.state === 'looked'
        ? `{ on: ${lines.on}, by: ${JSON.stringify(lines.by)}, how: ${JSON.stringify(lines.how)} }`
        : null,
  };
}
