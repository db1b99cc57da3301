import * as z from 'zod';
import type { BagPart, Units } from '../../domain/bag.ts';
import { FED_CELL } from '../../domain/fed.ts';
import type { Session, SessionPart } from '../../domain/session.ts';
import { GRAMS_PER_OUNCE, GRAMS_PER_POUND } from '../../domain/weight.ts';
import { cellText } from './cell-text.ts';
import { PEG_NAME } from './dated-schemas.ts';
import { eventId } from './event-schema.ts';
import { choice, matching, number, wholeNumber } from './fields.ts';
import { slipId } from './hours-schema.ts';
import { weight } from './measures.ts';

/** An opaque reference: with no digit in it, or with a figure behind words alone (`dave-smith-1`), it reads like a name. */
const ANGLER_REFERENCE =
  /^(?=.*[0-9])(?!(?!(?:angler|anon|card|member|ref|rod)-?\d)[a-z]{3,}(?:-[a-z]+)*-?\d{1,4}$)[a-z0-9-]{2,32}$/;

/** Two columns for one weight, which no spreadsheet takes for a date. */
const poundOunceColumns = (column: string) => [`${column}_lb`, `${column}_oz`] as const;

/** The columns of a bag part. */
const partColumns = (part: BagPart) => [`${part.id}_weight`, `${part.id}_count`] as const;

const poundsAndOunces = (column: string, what: string) => {
  const [pounds, ounces] = poundOunceColumns(column);
  return {
    [pounds]: wholeNumber(`whole pounds of ${what}`, 0, 2000).exactOptional(),
    [ounces]: number(`ounces of ${what} above the pounds`, 0, 15.9999).exactOptional(),
  };
};

/** The weight of a column, or of the two beside it; undefined where none is filled in, null where both are. */
function weightIn(cells: Readonly<Record<string, unknown>>, column: string): number | undefined | null {
  const whole = cells[column] as number | undefined;
  const [pounds, ounces] = poundOunceColumns(column).map((name) => cells[name] as number | undefined);
  if (pounds === undefined && ounces === undefined) return whole;
  if (whole !== undefined) return null;
  return (pounds ?? 0) * GRAMS_PER_POUND + (ounces ?? 0) * GRAMS_PER_OUNCE;
}

/** A row of `sessions.csv`; its water is that of its event. */
export const sessionRowSchema = (units: Units, bagParts: readonly BagPart[]) =>
  z
    .object({
      event: eventId(),
      section: cellText('the section').exactOptional(),
      peg: matching(PEG_NAME, 'peg-name', "the peg's name", 'Write it as painted on the post: 23 or 14a.'),
      angler: matching(
        ANGLER_REFERENCE,
        'angler-reference',
        'an opaque reference of small letters, digits and hyphens with a digit in it, such as a-7f3k9q, or nothing',
        'Names never enter the folder: give each angler a reference and keep the list of who is who outside it.',
      ).exactOptional(),
      status: choice(['weighed', 'blank', 'dnw', 'unlisted', 'absent', 'disqualified']),
      weight: weight(units, 'the bag').exactOptional(),
      ...poundsAndOunces('weight', 'the bag'),
      ...Object.fromEntries(
        bagParts.flatMap((part) => {
          const [weightColumn, countColumn] = partColumns(part);
          return [
            [weightColumn, weight(units, part.name).exactOptional()],
            ...Object.entries(poundsAndOunces(weightColumn, part.name)),
            [countColumn, wholeNumber(`fish of ${part.name}`, 0, 100_000).exactOptional()],
          ];
        }),
      ),
      spot: cellText('where it was fished: margin, island').exactOptional(),
      method: cellText('how: pole, feeder, waggler').exactOptional(),
      bait: cellText('the bait').exactOptional(),
      lines: wholeNumber('number of lines fed', 0, 20).exactOptional(),
      // For the club to look up: no page and no rating uses it, so that a session carries it no further.
      fed: matching(
        FED_CELL,
        'fed',
        'what was fed, each led by the time since the all in: 0:05 hemp; 1:30 pellet',
        'Write hours and minutes, a space and a few words, and a semicolon between two feeds.',
      ).exactOptional(),
      slip: slipId().exactOptional(),
    })
    .transform((row, context): Omit<Session, 'water'> => {
      const cells: Readonly<Record<string, unknown>> = row;
      const weightOf = (column: string) => {
        const grams = weightIn(cells, column);
        if (grams !== null) return grams;
        context.addIssue({
          code: 'custom',
          path: [column],
          message: `the weight once: in ${column}, or in ${poundOunceColumns(column).join(' and ')}`,
          params: { rule: 'weight-twice', mend: 'Empty one of them.' },
        });
        return undefined;
      };
      const bagGrams = weightOf('weight');
      const parts: Record<string, SessionPart> = {};
      for (const part of bagParts) {
        const [weightColumn, countColumn] = partColumns(part);
        const weightGrams = weightOf(weightColumn);
        const count = cells[countColumn] as number | undefined;
        if (weightGrams === undefined && count === undefined) continue;
        parts[part.id] = {
          ...(weightGrams === undefined ? {} : { weightGrams }),
          ...(count === undefined ? {} : { count }),
        };
      }
      // By hand: a log has a hundred thousand of these.
      return {
        event: row.event,
        peg: row.peg,
        status: row.status,
        parts,
        ...(row.section === undefined ? {} : { section: row.section }),
        ...(row.angler === undefined ? {} : { angler: row.angler }),
        ...(bagGrams === undefined ? {} : { weightGrams: bagGrams }),
        ...(row.spot === undefined ? {} : { spot: row.spot }),
        ...(row.method === undefined ? {} : { method: row.method }),
        ...(row.bait === undefined ? {} : { bait: row.bait }),
        ...(row.lines === undefined ? {} : { linesFed: row.lines }),
        ...(row.slip === undefined ? {} : { slip: row.slip }),
      };
    }) satisfies z.ZodType<Omit<Session, 'water'>>;
