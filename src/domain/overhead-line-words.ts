import type { Units } from './bag.ts';
import { formatLength, METRES_PER_FOOT } from './length.ts';
import type { OverheadLine } from './map.ts';

/** Whole feet that come out of metres as 98.999…97 are meant as 99. */
const ROUNDING = 1e-9;

/** A distance to an overhead line, always rounded down: it is never shown longer than it is. `44 m`, `144 ft`. */
export function lineDistanceWords(metres: number, units: Pick<Units, 'length'>): string {
  return units.length === 'm'
    ? `${Math.floor(metres + ROUNDING)} m`
    : `${Math.floor(metres / METRES_PER_FOOT + ROUNDING)} ft`;
}

/** The stand-off, always rounded up, and in metres first because that is how it is published: `30 m`, `30 m (99 ft)`. */
export function standOffWords(metres: number, units: Pick<Units, 'length'>): string {
  const inMetres = `${Math.ceil(metres - ROUNDING)} m`;
  return units.length === 'm' ? inMetres : `${inMetres} (${Math.ceil(metres / METRES_PER_FOOT - ROUNDING)} ft)`;
}

/** How far may be fished, always rounded down, in metres first as poles are sold: `9.5 m`, `9.5 m (31 ft)`. */
export function reachLimitWords(metres: number, units: Pick<Units, 'length'>): string {
  const inMetres = `${Math.floor(metres * 10 + ROUNDING) / 10} m`;
  return units.length === 'm' ? inMetres : `${inMetres} (${lineDistanceWords(metres, units)})`;
}

/** What a line carries: `11 kV`, `400 V`. Where nobody knows it, it counts as the highest. */
export function voltageWords({ voltageVolts }: Pick<OverheadLine, 'voltageVolts'>): string {
  if (voltageVolts === undefined) return 'voltage not known: treated as the highest';
  return voltageVolts >= 1000 ? `${voltageVolts / 1000} kV` : `${voltageVolts} V`;
}

/** A line by its name and what it carries, said once where the name tells it already: `11 kV line`, `Osier line, 11 kV`. */
export function lineNameWords(line: Pick<OverheadLine, 'name' | 'voltageVolts'>): string {
  const voltage = voltageWords(line);
  return ` ${line.name}`.includes(` ${voltage}`) ? line.name : `${line.name}, ${voltage}`;
}

/** How high a line is mapped, which explains and decides nothing; null where the map does not say. */
export function lineHeightWords(
  { heightMetres }: Pick<OverheadLine, 'heightMetres'>,
  units: Pick<Units, 'length'>,
): string | null {
  if (heightMetres === undefined) return null;
  return `mapped ${formatLength(heightMetres, units, 1)} high, which makes no peg safe: wires sag`;
}
