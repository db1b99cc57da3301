import { formatDay } from '../domain/day.ts';
import type { Threshold } from '../domain/venue.ts';

/** A threshold as the safety page lists it. */
export interface ThresholdRow {
  readonly id: string;
  /** "Overhead line stand-off". */
  readonly name: string;
  /** "30 m". */
  readonly value: string;
  readonly source: string;
  /** "2018 edition, checked 4 Jan 2026"; "edition not stated, never checked here". */
  readonly edition: string;
  /** How far to trust it; a figure from memory says so. */
  readonly basis: string;
  readonly isFromMemory: boolean;
}

const BASIS: Readonly<Record<Threshold['basis'], string>> = {
  seen: 'read on the page named',
  'second-hand': 'read on a page that quotes it',
  memory: 'from memory: check before use',
  club: 'the club’s own figure',
};

/** Exact: a mile is 1609.344 m (international yard and pound agreement, 1959). */
const METRES_PER_SECOND_PER_MPH = 1609.344 / 3600;

const UNITS: Readonly<Record<string, string>> = { C: '°C' };

/** A threshold in words. */
export function thresholdRow(threshold: Threshold): ThresholdRow {
  const { id, source, edition, checkedOn, basis } = threshold;
  const name = id.replaceAll('-', ' ');
  const checked = checkedOn === undefined ? 'no date of check on record' : `checked ${formatDay(checkedOn)}`;
  return {
    id,
    name: name.charAt(0).toUpperCase() + name.slice(1),
    value: valueWords(threshold),
    source,
    edition: `${edition === undefined ? 'edition not stated' : `edition ${edition}`}, ${checked}`,
    basis: BASIS[basis],
    isFromMemory: basis === 'memory',
  };
}

function valueWords({ value, unit }: Threshold): string {
  if (unit === 'rise/run' && value > 0) return `1 in ${Math.round(1 / value)}`;
  if (unit === 'deg') return `${value}°`;
  if (unit === 'm/s') return `${value} m/s (${Math.round(value / METRES_PER_SECOND_PER_MPH)} mph)`;
  return `${value} ${UNITS[unit] ?? unit}`;
}
