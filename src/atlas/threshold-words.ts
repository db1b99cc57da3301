import { capitalised } from '../domain/capitalised.ts';
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

const UNITS: Readonly<Record<string, string>> = { C: '°C', s: 'seconds', min: 'minutes' };

/** The shipped figures by their proper names; a club's own is named by its id. */
const NAMES: Readonly<Record<string, string>> = {
  'overhead-line-stand-off': 'Stand-off from overhead lines',
  'cold-water': 'Cold water, below',
  'cold-shock-passes': 'Cold shock passes within about',
  'warm-water-fish-care': 'Fish care in warm water, from',
  'steep-bank': 'A steep bank, above',
  'sloping-bank': 'A sloping bank, above',
  'deep-margin': 'Deep water at the edge, from',
  'rescue-kit-distance': 'Rescue kit at most this far away',
  'gust-under-trees': 'Leave pegs under trees at gusts of',
  'lightning-wait': 'Wait after the last thunder',
  'leptospirosis-watch': 'Watch for leptospirosis for',
  'accessible-rail-height': 'Rail of an accessible platform, at most',
  'accessible-turning-space': 'Turning space of an accessible platform, at least',
  'accessible-path-width': 'Width of an accessible path, at least',
  'accessible-path-gradient': 'Gradient of an accessible path, at most',
};

/** A threshold in words. */
export function thresholdRow(threshold: Threshold): ThresholdRow {
  const { id, source, edition, checkedOn, basis } = threshold;
  const checked = checkedOn === undefined ? 'no date of check on record' : `checked ${formatDay(checkedOn)}`;
  return {
    id,
    name: NAMES[id] ?? wordsOfId(id),
    value: valueWords(threshold),
    source,
    edition: `${edition === undefined ? 'edition not stated' : `edition ${edition}`}, ${checked}`,
    basis: BASIS[basis],
    isFromMemory: basis === 'memory',
  };
}

function wordsOfId(id: string): string {
  const name = id.replaceAll('-', ' ');
  return capitalised(name);
}

function valueWords({ value, unit }: Threshold): string {
  if (unit === 'rise/run' && value > 0) return `1 in ${Math.round(1 / value)}`;
  if (unit === 'deg') return `${value}°`;
  if (unit === 'm/s') return `${Math.round(value / METRES_PER_SECOND_PER_MPH)} mph (${Math.round(value)} m/s)`;
  return `${value} ${UNITS[unit] ?? unit}`;
}
