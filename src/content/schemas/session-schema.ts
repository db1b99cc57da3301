import * as z from 'zod';
import type { BagPart, Units } from '../../domain/bag.ts';
import type { Session, SessionPart } from '../../domain/session.ts';
import { eventId } from './event-schema.ts';
import { choice, matching, text, wholeNumber } from './fields.ts';
import { weight } from './measures.ts';
import { PEG_NAME } from './peg-schema.ts';

/** An opaque reference: with no digit in it, or with a figure behind words alone (`dave-smith-1`), it reads like a name. */
const ANGLER_REFERENCE =
  /^(?=.*[0-9])(?!(?!(?:angler|anon|card|member|ref|rod)-?\d)[a-z]{3,}(?:-[a-z]+)*-?\d{1,4}$)[a-z0-9-]{2,32}$/;

/** A column of a bag part. */
export const partColumns = (part: BagPart) => [`${part.id}_weight`, `${part.id}_count`] as const;

/** A row of `sessions.csv`; its water is that of its event. */
export const sessionRowSchema = (units: Units, bagParts: readonly BagPart[]) =>
  z
    .object({
      event: eventId(),
      section: text('the section').exactOptional(),
      peg: matching(PEG_NAME, 'peg-name', "the peg's name", 'Write it as painted on the post: 23 or 14a.'),
      angler: matching(
        ANGLER_REFERENCE,
        'angler-reference',
        'an opaque reference of small letters, digits and hyphens with a digit in it, such as a-7f3k9q, or nothing',
        'Names never enter the folder: give each angler a reference and keep the list of who is who outside it.',
      ).exactOptional(),
      status: choice(['weighed', 'blank', 'dnw', 'unlisted', 'absent', 'disqualified']),
      weight: weight(units, 'the bag').exactOptional(),
      ...Object.fromEntries(
        bagParts.flatMap((part) => {
          const [weightColumn, countColumn] = partColumns(part);
          return [
            [weightColumn, weight(units, part.name).exactOptional()],
            [countColumn, wholeNumber(`fish of ${part.name}`, 0, 100_000).exactOptional()],
          ];
        }),
      ),
      spot: text('where it was fished: margin, island').exactOptional(),
      method: text('how: pole, feeder, waggler').exactOptional(),
      bait: text('the bait').exactOptional(),
      lines: wholeNumber('number of lines fed', 0, 20).exactOptional(),
    })
    .transform((row): Omit<Session, 'water'> => {
      const cells: Readonly<Record<string, unknown>> = row;
      const parts: Record<string, SessionPart> = {};
      for (const part of bagParts) {
        const [weightColumn, countColumn] = partColumns(part);
        const weightGrams = cells[weightColumn] as number | undefined;
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
        ...(row.weight === undefined ? {} : { weightGrams: row.weight }),
        ...(row.spot === undefined ? {} : { spot: row.spot }),
        ...(row.method === undefined ? {} : { method: row.method }),
        ...(row.bait === undefined ? {} : { bait: row.bait }),
        ...(row.lines === undefined ? {} : { linesFed: row.lines }),
      };
    }) satisfies z.ZodType<Omit<Session, 'water'>>;
