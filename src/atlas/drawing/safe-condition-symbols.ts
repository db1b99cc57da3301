import type { SignSymbol } from './sign-symbol.ts';

/** Symbols of the safe-condition signs in a square of 90 × 90: our own drawing after the register of ISO 7010. */
export const SAFE_CONDITION_SYMBOLS: Readonly<Record<string, SignSymbol>> = {
  // A cross with equal arms.
  E003: { fill: 'M34,12H56V34H78V56H56V78H34V56H12V34H34z' },
  // A telephone handset with a small cross.
  E004: {
    fill: 'M18,30Q14,40 24,56T50,78Q60,82 66,74L56,62L48,66Q34,58 30,44L36,38L28,24Q20,24 18,30zM62,12H70V20H78V28H70V36H62V28H54V20H62z',
  },
  // A heart parted by a bolt, with a small cross.
  E010: {
    fill: 'M42,80L16,52Q8,40 16,32Q26,24 36,32L44,40L36,52H45L38,68L54,48H45L54,34Q64,26 70,34Q76,42 68,52zM68,8H76V16H84V24H76V32H68V24H60V16H68z',
  },
  // A ring with its bands.
  E040: {
    strokes: [
      [15, 'M45,20A25,25 0 1,1 44.9,20z'],
      [
        3,
        'M27.5,16.5A34,34 0 0,0 16.5,27.5M62.5,16.5A34,34 0 0,1 73.5,27.5M27.5,73.5A34,34 0 0,1 16.5,62.5M62.5,73.5A34,34 0 0,0 73.5,62.5',
      ],
    ],
  },
  // A ring with a line paid out from it.
  E041: {
    strokes: [
      [11, 'M38,16A19,19 0 1,1 37.9,16z'],
      [3.6, 'M57,44Q72,48 66,58Q58,68 44,62Q26,58 22,68Q22,78 42,76L78,72'],
    ],
  },
};
