import { toFeetInches } from '../../domain/length.ts';

/** Writes a length into a record as a person would in the venue's unit: `4.2 m`, or `13 ft 9 in` to the nearest inch. */
export function lengthText(metres: number, unit: 'm' | 'ft'): string {
  if (unit === 'm') return `${Number(metres.toFixed(2))} m`;
  const { feet, inches } = toFeetInches(Math.abs(metres));
  const sign = metres < 0 && feet + inches > 0 ? '-' : '';
  return inches === 0 ? `${sign}${feet} ft` : `${sign}${feet} ft ${inches} in`;
}
