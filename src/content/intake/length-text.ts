const METRES_PER_FOOT = 0.3048;

/** Writes a length as a person would in the venue's unit: `4.2 m`, or `13 ft 9 in` to the nearest inch. */
export function lengthText(metres: number, unit: 'm' | 'ft'): string {
  if (unit === 'm') return `${Number(metres.toFixed(2))} m`;
  const inches = Math.round((metres / METRES_PER_FOOT) * 12);
  const sign = inches < 0 ? '-' : '';
  const feet = Math.floor(Math.abs(inches) / 12);
  const rest = Math.abs(inches) % 12;
  return rest === 0 ? `${sign}${feet} ft` : `${sign}${feet} ft ${rest} in`;
}
