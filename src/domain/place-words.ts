import type { Units } from './bag.ts';
import { METRES_PER_FOOT } from './length.ts';

/** A distance over the ground, to the metre or the foot: `140 m`, `459 ft`. */
export function formatDistance(metres: number, units: Pick<Units, 'length'>): string {
  return units.length === 'm' ? `${Math.round(metres)} m` : `${Math.round(metres / METRES_PER_FOOT)} ft`;
}

const EIGHT_POINTS = [
  'north',
  'north-east',
  'east',
  'south-east',
  'south',
  'south-west',
  'west',
  'north-west',
] as const;

/** The nearest of the eight main points, in words: 48° is `north-east`. */
export function compassWords(bearingDegrees: number): string {
  return EIGHT_POINTS[((Math.round(bearingDegrees / 45) % 8) + 8) % 8] as string;
}

/**
 * A position in decimal degrees to five places, about a metre, with its letters behind the figures as ISO 6709 has it for
 * people: `52.75126 N, 0.05481 W`. A minus sign is lost when it is read out.
 */
export function formatPosition(position: { readonly lat: number; readonly lng: number }): string {
  const degrees = (value: number, positive: string, negative: string) => {
    const figures = Math.abs(value).toFixed(5);
    return `${figures} ${value < 0 && Number(figures) !== 0 ? negative : positive}`;
  };
  return `${degrees(position.lat, 'N', 'S')}, ${degrees(position.lng, 'E', 'W')}`;
}
