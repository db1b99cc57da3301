import type { DrawData, DrawLine } from '../../atlas/draw-page.ts';
import type { Day } from '../../domain/day.ts';
import type { Caught } from '../../match-day/pace.ts';
import { MAX_LINES, MAX_SLIP_TEXT, type PlumbedLine, type Slip, WATER_DEGREES } from '../../match-day/slip.ts';
import type { Say } from '../../words/say.ts';
import { localDay } from '../local-day.ts';
import type { OwnDepth } from '../own-depths.ts';
import type { Outing } from './outing.ts';

/** A slip made of what was noted, or what has to be mended first, by field. */
export type SlipMade =
  | { readonly ok: true; readonly slip: Slip }
  | { readonly ok: false; readonly faults: Readonly<Partial<Record<SlipField, string>>> };

/** Fields of a slip that a person fills in; `start` stands for the all in. */
export type SlipField = 'spot' | 'method' | 'bait' | 'lines' | 'waterDegreesC' | 'start';

/** What is handed to the club: the day on the peg with what was plumbed that day, and nothing of who sat there. */
export function slipOf(
  outing: Outing,
  data: Pick<DrawData, 'venue' | 'water' | 'pegs'>,
  ownDepths: readonly OwnDepth[],
  say: Say,
): SlipMade {
  const faults: Partial<Record<SlipField, string>> = {};
  if (outing.start === null) faults.start = say('pace.slipBeforeAllIn');
  for (const field of ['spot', 'method', 'bait'] as const) {
    if (outing[field].trim().length > MAX_SLIP_TEXT) faults[field] = say('pace.tooLong', { most: MAX_SLIP_TEXT });
  }
  const lines = numberIn(outing.lines);
  if (lines !== null && !(Number.isInteger(lines) && lines >= 0 && lines <= MAX_LINES)) {
    faults.lines = say('pace.linesFault', { most: MAX_LINES });
  }
  const degrees = numberIn(outing.waterDegreesC);
  const [least, most] = WATER_DEGREES;
  if (degrees !== null && !(degrees >= least && degrees <= most)) {
    faults.waterDegreesC = say('pace.degreesFault', { least, most });
  }
  if (outing.start === null || Object.keys(faults).length > 0) return { ok: false, faults };
  const { id, peg, match, hours, caught, fed = [], spot, method, bait } = outing;
  const day = localDay(new Date(outing.start));
  return {
    ok: true,
    slip: {
      ...(id === undefined ? {} : { id }),
      venue: data.venue,
      water: data.water,
      peg,
      day,
      match,
      hours,
      caught: caught.map(rounded),
      fed: fed.map(({ minute, what }) => ({ minute: Math.floor(minute), what })),
      depths: plumbedOn(day, ownDepths, data.pegs[peg]?.lines ?? []),
      spot: spot.trim(),
      method: method.trim(),
      bait: bait.trim(),
      lines,
      waterDegreesC: degrees,
    },
  };
}

/** What was plumbed that day at the peg's lines, to the centimetre. */
function plumbedOn(day: Day, ownDepths: readonly OwnDepth[], lines: readonly DrawLine[]): readonly PlumbedLine[] {
  return ownDepths.flatMap((own) => {
    const line = lines.find(({ id }) => id === own.line);
    if (own.day !== day || line === undefined) return [];
    return [{ lineMetres: toCentimetre(line.metres), depthMetres: toCentimetre(own.metres) }];
  });
}

function toCentimetre(metres: number): number {
  return Math.round(metres * 100) / 100;
}

/** To the minute begun and a tenth of a gram: more digits tell nothing and fill the code. */
function rounded({ minute, part, grams }: Caught): Caught {
  return { minute: Math.floor(minute), part, grams: Math.round(grams * 10) / 10 };
}

/** A number as typed, with a point or a comma; null where nothing was typed. */
function numberIn(text: string): number | null {
  const written = text.trim().replace(',', '.');
  return written === '' ? null : Number(written);
}
