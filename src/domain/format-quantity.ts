import type { Units } from './bag.ts';

/** Metres in the international foot, exact (international yard and pound agreement, 1959). */
export const METRES_PER_FOOT = 0.3048;
/** Kilograms in the international avoirdupois pound, exact (the same agreement). */
export const KILOGRAMS_PER_POUND = 0.45359237;

const INCHES_PER_FOOT = 12;
const OUNCES_PER_POUND = 16;

/** A length a person measures at the bank, to the centimetre or the inch: `1.42 m`, `4 ft 8 in`. */
export function formatLength(metres: number, unit: Units['length']): string {
  if (unit === 'm') return `${metres.toFixed(2)} m`;
  const inches = Math.round((Math.abs(metres) / METRES_PER_FOOT) * INCHES_PER_FOOT);
  const sign = metres < 0 && inches > 0 ? '−' : '';
  const feet = Math.floor(inches / INCHES_PER_FOOT);
  const rest = inches % INCHES_PER_FOOT;
  if (feet === 0) return `${sign}${rest} in`;
  return rest === 0 ? `${sign}${feet} ft` : `${sign}${feet} ft ${rest} in`;
}

/** A distance over the ground, to the metre or the foot: `140 m`, `459 ft`. */
export function formatDistance(metres: number, unit: Units['length']): string {
  return unit === 'm' ? `${Math.round(metres)} m` : `${Math.round(metres / METRES_PER_FOOT)} ft`;
}

/** A weight as it is called at the scales: `27 lb 10 oz`, `12 oz`, `12.53 kg`. */
export function formatWeight(kilograms: number, unit: Units['weight']): string {
  if (unit === 'kg') return `${kilograms.toFixed(kilograms < 10 ? 2 : 1)} kg`;
  const ounces = Math.round((kilograms / KILOGRAMS_PER_POUND) * OUNCES_PER_POUND);
  const pounds = Math.floor(ounces / OUNCES_PER_POUND);
  const rest = ounces % OUNCES_PER_POUND;
  if (ounces === 0) return '0';
  if (pounds === 0) return `${rest} oz`;
  return rest === 0 ? `${pounds} lb` : `${pounds} lb ${rest} oz`;
}

/** A multiple of par to two figures after the point: `0.82`. */
export function formatMultiple(multiple: number): string {
  return multiple.toFixed(2);
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

/** A position in decimal degrees to five places, about a metre: `52.75126, −0.05481`. */
export function formatPosition(position: { readonly lat: number; readonly lng: number }): string {
  const degrees = (value: number) => value.toFixed(5).replace('-', '−');
  return `${degrees(position.lat)}, ${degrees(position.lng)}`;
}
