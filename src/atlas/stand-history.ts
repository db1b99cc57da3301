import { hasDays } from '../domain/dated.ts';
import { type Day, formatDay } from '../domain/day.ts';
import { earlierBearers, type GoneNumber, goneNumbers } from '../domain/gone-numbers.ts';
import { formatLength } from '../domain/length.ts';
import { nameOf } from '../domain/name-of.ts';
import type { Peg } from '../domain/peg.ts';
import type { PegFacts } from '../domain/peg-verdict.ts';
import { type Atlas, waterOf } from './atlas.ts';
import { pegLink } from './site-link.ts';

/** A sentence of a stand's past, with the sheet it speaks of where there is one. */
export interface PastLine {
  readonly words: string;
  readonly link: { readonly words: string; readonly href: string } | null;
}

const line = (words: string, link: PastLine['link'] = null): PastLine => ({ words, link });

/** Whose number this is and was: for the reader with an old sheet, an old board or an old guide in hand. */
export function numberLines(atlas: Atlas, peg: Peg): readonly PastLine[] {
  const { pegs, retired = [] } = atlas.venue;
  const own = (peg.was ?? []).map(({ peg: number, until }) =>
    line(`This post was ${number} until ${formatDay(until)}; what was logged on it then counts here.`),
  );
  const others = earlierBearers(peg, [...pegs, ...retired]).map(({ stand, spell }) => {
    const until = `Until ${formatDay(spell.until!)}, ${peg.peg} was another post`;
    if (stand.retired !== undefined) return line(`${until}, ${retiredWords(stand)}.`);
    return line(`${until}:`, { words: `peg ${stand.peg} today`, href: pegLink(stand.water, stand.peg) });
  });
  return [...own, ...others];
}

function retiredWords({ retired }: Peg): string {
  const why = retired?.why === undefined ? '' : `: ${retired.why.charAt(0).toLowerCase()}${retired.why.slice(1)}`;
  return `not fished since ${formatDay(retired!.from)}${why}`;
}

/** What changed at a stand and how its log is read for it. */
export function changeLines(atlas: Atlas, peg: Peg): readonly PastLine[] {
  const { settings } = atlas.venue;
  const { guideDay, units } = settings;
  return [
    ...(peg.since === undefined ? [] : [line(`First fished on ${formatDay(peg.since)}.`)]),
    ...(peg.moved ?? []).map(({ on, metres, newGround }) =>
      line(
        `Its platform was set ${formatLength(metres, units, 0)} away on ${formatDay(on)}${
          newGround
            ? ', before other water: earlier bags are rated as those of another place.'
            : '; bags from before still count.'
        }`,
      ),
    ),
    ...(peg.datedFeatures ?? []).filter(hasDays).map(({ id, from, until }) => {
      const name = nameOf(settings.features, id);
      return line(`${name} ${spanWords(from, until, guideDay)}.`);
    }),
  ];
}

function spanWords(from: Day | undefined, until: Day | undefined, guideDay: Day): string {
  const ends = until === undefined ? '' : `until ${formatDay(until)}`;
  if (from === undefined) return ends;
  return `${until === undefined && from <= guideDay ? 'since' : 'from'} ${formatDay(from)}${ends === '' ? '' : ` ${ends}`}`;
}

/** The page of a number that is on no post today. It leads on and sells nothing. */
export interface GonePage {
  readonly water: { readonly id: string; readonly name: string };
  readonly number: string;
  /** "No post of Eelback has carried 39 since 1 Feb 2024." */
  readonly words: string;
  /** Where the stand went: the sheet it has today, or why there is none. */
  readonly now: PastLine;
}

/** Every number that is on no post today, each with its page. */
export function gonePages(atlas: Atlas): readonly GonePage[] {
  const { pegs, retired } = atlas.venue;
  return goneNumbers(pegs, retired).map((gone) => gonePage(atlas, gone));
}

function gonePage(atlas: Atlas, { water: id, number, since, stand }: GoneNumber): GonePage {
  const { name } = waterOf(atlas, id);
  return {
    water: { id, name },
    number,
    words: `No post of ${name} has carried ${number} since ${formatDay(since)}.`,
    now:
      stand.retired === undefined
        ? line('The post that carried it is', { words: `peg ${stand.peg} today`, href: pegLink(id, stand.peg) })
        : line(
            `The place has ${retiredWords(stand).replace('not fished', 'not been fished')}. It is not in the draw and not to be fished.`,
          ),
  };
}

/**
 * What an older copy on a phone is told of such a number. A peg of which nothing is told counts as open there: so all of them
 * are told as closed.
 */
export function goneFacts({ venue }: Atlas): Readonly<Record<string, PegFacts>> {
  return Object.fromEntries(
    goneNumbers(venue.pegs, venue.retired).map(({ water, number, since, stand }) => [
      `${water}/${number}`,
      {
        status: 'closed' as const,
        since,
        reason:
          stand.retired === undefined
            ? `No post carries this number any more: it is peg ${stand.peg} today.`
            : `The place has ${retiredWords(stand).replace('not fished', 'not been fished')}.`,
        standOffMetres: venue.settings.standOff.metres,
      },
    ]),
  );
}
