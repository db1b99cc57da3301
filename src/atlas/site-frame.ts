import type { Day } from '../domain/day.ts';
import { formatDay } from '../domain/day.ts';
import type { Emergency } from '../domain/venue.ts';
import type { Atlas } from './atlas.ts';
import { firstSteps, type PegEmergency } from './peg-emergency.ts';
import { siteLink, waterLink } from './site-link.ts';

export interface ContentsEntry {
  readonly name: string;
  readonly href: string;
}

/** What stands around every page. */
export interface SiteFrame {
  readonly venueName: string;
  readonly club: string;
  readonly invented: boolean;
  readonly guideDay: Day;
  readonly guideDayWords: string;
  readonly emergency: Emergency;
  /** What to do for someone in the water: it stands first in the block of every page. */
  readonly inWater: PegEmergency['steps'];
  /** For the visiting angler, then for the club. */
  readonly contents: readonly ContentsEntry[];
}

/** The frame of every page of this venue. */
export function siteFrame(atlas: Atlas): SiteFrame {
  const { settings, waters } = atlas.venue;
  return {
    venueName: settings.name,
    club: settings.club,
    invented: settings.invented,
    guideDay: settings.guideDay,
    guideDayWords: formatDay(settings.guideDay),
    emergency: settings.emergency,
    inWater: firstSteps(['in-water'], settings),
    contents: [
      { name: 'Find a peg', href: siteLink('') },
      ...waters.map(({ id, name }) => ({ name, href: waterLink(id) })),
      ...((atlas.venue.matches ?? []).length === 0 ? [] : [{ name: 'Matches', href: siteLink('matches/') }]),
      { name: 'Features by month', href: siteLink('features/') },
      { name: 'Bank notices', href: siteLink('notices/') },
      { name: 'Safety', href: siteLink('safety/') },
      { name: 'Rules', href: siteLink('rules/') },
      { name: 'Workings', href: siteLink('workings/') },
      { name: 'Hazard register', href: siteLink('register/') },
      { name: 'Checks due', href: siteLink('due/') },
      { name: 'Bank round', href: siteLink('bank-round/') },
    ],
  };
}

/** A telephone number as a link dials it: digits and a leading plus. */
export function dialLink(number: string): string {
  return `tel:${number.replace(/[^\d+]/g, '')}`;
}
