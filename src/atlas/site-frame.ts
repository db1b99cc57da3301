import type { Day } from '../domain/day.ts';
import type { Emergency } from '../domain/venue.ts';
import { dayWords } from '../words/day-words.ts';
import type { Say } from '../words/say.ts';
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
  /** The units its figures are written in, for the scripts that tell them in others: "lb m". */
  readonly units: string;
  readonly guideDay: Day;
  readonly guideDayWords: string;
  readonly emergency: Emergency;
  /** What to do for someone in the water: it stands first in the block of every page. */
  readonly inWater: PegEmergency['steps'];
  /** For the visiting angler, then for the club. */
  readonly contents: readonly ContentsEntry[];
}

/** The frame of every page of this venue, in the voice of the page. */
export function siteFrame(atlas: Atlas, say: Say): SiteFrame {
  const { settings, waters } = atlas.venue;
  return {
    venueName: settings.name,
    club: settings.club,
    invented: settings.invented,
    units: `${settings.units.weight} ${settings.units.length}`,
    guideDay: settings.guideDay,
    guideDayWords: dayWords(settings.guideDay, say),
    emergency: settings.emergency,
    inWater: firstSteps(['in-water'], settings),
    contents: [
      { name: say('contents.findPeg'), href: siteLink('') },
      ...waters.map(({ id, name }) => ({ name, href: waterLink(id) })),
      ...((atlas.venue.matches ?? []).length === 0
        ? []
        : [{ name: say('contents.matches'), href: siteLink('matches/') }]),
      { name: say('contents.features'), href: siteLink('features/') },
      { name: say('contents.notices'), href: siteLink('notices/') },
      { name: say('contents.safety'), href: siteLink('safety/') },
      { name: say('contents.rules'), href: siteLink('rules/') },
      { name: say('contents.workings'), href: siteLink('workings/') },
      { name: say('contents.register'), href: siteLink('register/') },
      { name: say('contents.due'), href: siteLink('due/') },
      { name: say('contents.bankRound'), href: siteLink('bank-round/') },
    ],
  };
}

/** A telephone number as a link dials it: digits and a leading plus. */
export function dialLink(number: string): string {
  return `tel:${number.replace(/[^\d+]/g, '')}`;
}
