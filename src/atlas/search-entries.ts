import { isCurrent } from '../domain/hazard.ts';
import { nameOf } from '../domain/name-of.ts';
import type { Peg } from '../domain/peg.ts';
import { hazardKind } from '../domain/risk.ts';
import { type Say, sayIn } from '../words/say.ts';
import { type Atlas, waterOf } from './atlas.ts';
import { markdownText } from './markdown-text.ts';
import { noticesPage } from './notices-page.ts';
import { limitWords } from './peg-safety.ts';
import { standingOfPeg } from './peg-verdicts.ts';
import { pegLink, siteLink, waterLink } from './site-link.ts';
import { gonePages } from './stand-history.ts';

/** What an entry is, in the order in which results are shown. */
export type SearchKind = 'peg' | 'gone' | 'feature' | 'notice' | 'water' | 'rule';

/** One thing that can be found: its words are text, whatever stands in them. */
export interface SearchEntry {
  readonly kind: SearchKind;
  readonly title: string;
  readonly href: string;
  readonly text: string;
  /** Of a peg: `{ water, peg }`, and closed or not as the phone works it out; `closed` is that of the guide's day. */
  readonly peg?: { readonly water: string; readonly peg: string };
  readonly closed?: string;
  readonly dated?: string;
  /** Of a notice: its days, so that one that is over is not read as live. */
  readonly days?: string;
}

/** Everything that can be searched for: pegs with their notes, numbers of before, features, notices, waters and rules. */
export function searchEntries(atlas: Atlas): readonly SearchEntry[] {
  const { venue } = atlas;
  const notices = noticesPage(venue);
  const say = sayIn(venue.settings.language);
  return [
    ...venue.waters.flatMap(({ id }) => (atlas.pegsByWater.get(id) ?? []).map((peg) => pegEntry(atlas, peg, say))),
    ...gonePages(atlas).map(
      ({ water, number, words, now }): SearchEntry => ({
        kind: 'gone',
        title: say('search.gone', { water: water.name, peg: number }),
        href: pegLink(water.id, number),
        text: [words, now.words, now.link?.words ?? ''].join(' ').trim(),
        peg: { water: water.name, peg: number },
      }),
    ),
    ...venue.settings.features.map(
      ({ id, name, meaning }): SearchEntry => ({
        kind: 'feature',
        title: name,
        href: siteLink(`features/#where-${id}`),
        text: meaning ?? '',
      }),
    ),
    ...[...notices.live, ...notices.upcoming, ...notices.past].map(
      ({ id, title, markdown, about, days, kindWord }): SearchEntry => ({
        kind: 'notice',
        title,
        href: siteLink(`notices/#${id}`),
        text: `${kindWord} for ${about}. ${markdownText(markdown)}`,
        days,
      }),
    ),
    ...venue.waters.map(
      ({ id, name, kind, access, notesMarkdown }): SearchEntry => ({
        kind: 'water',
        title: name,
        href: waterLink(id),
        text: [kind, access ?? '', markdownText(notesMarkdown)].join(' ').trim(),
      }),
    ),
    ...ruleEntries(atlas, say),
  ];
}

function pegEntry(atlas: Atlas, peg: Peg, say: Say): SearchEntry {
  const { settings } = atlas.venue;
  const { closed, dated } = standingOfPeg(atlas, peg);
  const features = peg.features.map((id) => nameOf(settings.features, id));
  const reach = peg.reach
    .map(({ what }) => what.replaceAll('-', ' '))
    .filter((what) => !features.some((name) => name.toLowerCase() === what));
  const hazards = peg.hazards.filter(isCurrent).map(({ kind, place }) => `${hazardKind(kind).name}: ${place}.`);
  const words = [
    peg.where ?? '',
    [...new Set([...features, ...reach])].join(', '),
    ...limitWords(peg, settings),
    ...hazards,
    ...peg.notes.map(({ heading, markdown }) => `${heading} ${markdownText(markdown)}`.trim()),
    ...(peg.was ?? []).map(({ peg: number }) => say('search.was', { peg: number })),
  ];
  const { name } = waterOf(atlas, peg.water);
  return {
    kind: 'peg',
    title: `${name} ${peg.peg}`,
    href: pegLink(peg.water, peg.peg),
    text: words
      .filter((each) => each !== '')
      .join('. ')
      .replaceAll('..', '.'),
    peg: { water: name, peg: peg.peg },
    ...(closed === null ? {} : { closed: closed.because }),
    ...(dated === undefined ? {} : { dated }),
  };
}

/** One entry a paragraph or point of the rules, so that what is found is what was asked. */
function ruleEntries({ venue: { settings } }: Atlas, say: Say): readonly SearchEntry[] {
  const parts = settings.rulesMarkdown.split(/\n(?=\s*(?:[-*+]|\d+[.)])\s)|\n\s*\n/).map(markdownText);
  return parts
    .filter((text) => text !== '')
    .map((text) => ({
      kind: 'rule',
      title: say('search.rulesOf', { club: settings.club }),
      href: siteLink('rules/'),
      text,
    }));
}
