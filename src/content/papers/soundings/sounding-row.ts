import type { SettledSounding } from './settle-soundings.ts';

/** Columns of `soundings/<water>.csv` that a depth with a fixed place needs. */
export const SOUNDING_COLUMNS = ['lat', 'lng', 'depth', 'date', 'level'] as const;

/** A depth as a row of the file. */
export function soundingRow({ at, depthMetres, day, level }: Omit<SettledSounding, 'water'>) {
  return {
    lat: at.lat.toFixed(7),
    lng: at.lng.toFixed(7),
    depth: `${depthMetres.toFixed(2)} m`,
    date: day,
    level: level ?? '',
  };
}
