import { replacedFrom } from '../domain/notice-state.ts';
import type { NowFile, NowNotice } from '../domain/now-file.ts';
import type { Venue } from '../domain/venue.ts';
import type { Atlas } from './atlas.ts';
import { venueVerdicts } from './peg-verdicts.ts';
import { goneFacts } from './stand-history.ts';

/** What the now file says of a guide; its edition and the marks of its pages are known only once it is built. */
export type NowFacts = Pick<NowFile, 'day' | 'pegs' | 'notices'>;

/** Everything that may close or limit a peg on any day, and the notices that are not over, in the order of the folder. */
export function nowFacts(atlas: Atlas): NowFacts {
  const { guideDay, facts } = venueVerdicts(atlas);
  return { day: guideDay, pegs: { ...goneFacts(atlas), ...facts }, notices: noticesNow(atlas.venue) };
}

function noticesNow({ notices, settings }: Venue): readonly NowNotice[] {
  return notices
    .map((notice): NowNotice => {
      const { id, title, kind, from, until, waters, pegs } = notice;
      const replaced = replacedFrom(notice, notices);
      return {
        id,
        title,
        kind,
        from,
        ...(until === undefined ? {} : { until }),
        ...(replaced === null ? {} : { replacedFrom: replaced }),
        ...(waters.length === 0 ? {} : { waters }),
        ...(pegs.length === 0 ? {} : { pegs }),
      };
    })
    .filter(({ until = settings.guideDay }) => until >= settings.guideDay);
}
