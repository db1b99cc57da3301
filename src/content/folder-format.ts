import { parsed, unreadable } from '../domain/parsed.ts';
import { fieldOf } from './schemas/fields.ts';

/** What `format` of a folder is where `venue.md` does not say. */
export const FIRST_FORMAT = 1;

/**
 * The newest format of a venue folder. In format 2 every peg record states the id of its stand; both know facts with days,
 * and format 1 is read as it always was. `upgrade/steps.ts` rewrites the one into the other.
 */
export const NEWEST_FORMAT = 2;

/** `format` of `venue.md`. */
export const formatField = () =>
  fieldOf(
    (written) => {
      const format = /^[1-9]\d{0,5}$/.test(written) ? Number(written) : Number.NaN;
      if (format >= FIRST_FORMAT && format <= NEWEST_FORMAT) return parsed(format);
      return format > NEWEST_FORMAT
        ? unreadable(
            'format-newer',
            `format ${FIRST_FORMAT} to ${NEWEST_FORMAT}, which this version reads`,
            `The folder was written for a newer version of Peg Atlas. Use that one; this one would misread it.`,
          )
        : unreadable(
            'format-unknown',
            `format ${FIRST_FORMAT} to ${NEWEST_FORMAT}`,
            'Write one of these numbers, or leave the line out for a folder of format 1.',
          );
    },
    {
      description: 'the format of this folder; 1 where left out',
      type: 'integer',
      minimum: FIRST_FORMAT,
      maximum: NEWEST_FORMAT,
    },
  );
