import type { Day } from '../domain/day.ts';
import { type GoneNumber, goneNumbers } from '../domain/gone-numbers.ts';
import type { Water } from '../domain/map.ts';
import { dayWords } from '../words/day-words.ts';
import { sayIn } from '../words/say.ts';
import { type Atlas, surveyOfWater, waterOf } from './atlas.ts';
import type { OutlineDrawing } from './drawing/outline.ts';
import { mapFrame } from './map-frame.ts';
import { type NoticesByState, noticesPage } from './notices-page.ts';
import { closedAlike, type PegMention, pegMention } from './peg-mention.ts';
import { closedCount, type PegStanding } from './peg-verdicts.ts';
import { type PlaceFindingLine, placeFindingLines } from './place-finding-lines.ts';
import { pegLink, waterLink } from './site-link.ts';

/** One water on the first page, with every one of its pegs. */
export interface HomeWater {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly href: string;
  /** "38 pegs, 2 of them closed; 0.93 ha; 1.64 m deep on average". */
  readonly words: string;
  readonly shape: OutlineDrawing;
  /** Pegs that are closed together, or will be, one a reason. */
  readonly closures: readonly HomeClosure[];
  /** Numbers that are on no post any more. */
  readonly gone: readonly { readonly number: string; readonly href: string }[];
  readonly pegs: readonly PegMention[];
}

/** Pegs of one water that are closed together. */
export interface HomeClosure {
  /** "14, 15, 16". */
  readonly pegs: string;
  readonly standing: PegStanding;
}

export interface HomePage {
  readonly venueName: string;
  readonly club: string;
  readonly notices: NoticesByState;
  /** Current hazards that are at no peg, of every water. */
  readonly findings: readonly PlaceFindingLine[];
  readonly guideDay: Day;
  readonly waters: readonly HomeWater[];
  /** "96 pegs on 3 waters; 3,512 sessions of 134 events, 25 Nov 2023 to 21 Nov 2026". */
  readonly behind: string;
  /** Whether each water's pegs stand folded: a long list would hide the rest of the page. */
  readonly isFolded: boolean;
}

/** More pegs than this stand folded by water. */
const MAX_UNFOLDED = 400;

/** Puts together the first page. */
export function homePage(atlas: Atlas): HomePage {
  const { settings, waters, pegs, retired } = atlas.venue;
  const gone = goneNumbers(pegs, retired);
  return {
    venueName: settings.name,
    club: settings.club,
    notices: noticesPage(atlas.venue),
    findings: placeFindingLines(atlas.venue, waters),
    guideDay: settings.guideDay,
    waters: waters.map(({ id }) => homeWater(atlas, id, gone)),
    behind: behindWords(atlas),
    isFolded: pegs.length > MAX_UNFOLDED,
  };
}

/** Long side of a water's silhouette, in user units. */
const SHAPE_UNITS = 400;

function homeWater(atlas: Atlas, id: string, gone: readonly GoneNumber[]): HomeWater {
  const water = waterOf(atlas, id);
  const pegs = atlas.pegsByWater.get(id) ?? [];
  const closed = closedCount(atlas, pegs);
  const mentions = pegs.map((peg) => pegMention(atlas, peg));
  const { language, guideDay } = atlas.venue.settings;
  const say = sayIn(language);
  const isDated = mentions.some(({ standing }) => standing.dated !== undefined);
  const { areaSquareMetres } = surveyOfWater(atlas, id);
  return {
    id,
    name: water.name,
    kind: water.kind,
    href: waterLink(id),
    words: say(closed === 0 ? 'home.water' : isDated ? 'home.waterClosedOn' : 'home.waterClosed', {
      pegs: pegs.length,
      closed,
      day: dayWords(guideDay, say),
      hectares: (areaSquareMetres / 10_000).toFixed(2),
    }),
    shape: shapeOf(water),
    closures: closedAlike(mentions).map(({ pegs: alike, standing }) => ({
      pegs: alike.map(({ peg }) => peg).join(', '),
      standing,
    })),
    gone: gone.filter(({ water: of }) => of === id).map(({ number }) => ({ number, href: pegLink(id, number) })),
    pegs: mentions,
  };
}

function shapeOf({ map }: Water): OutlineDrawing {
  const metres = mapFrame(map.outline, 1, 1);
  const frame = mapFrame(map.outline, 1, SHAPE_UNITS / Math.max(metres.width, metres.height));
  const rings = [map.outline, ...map.islands.map(({ ring }) => ring)].map((ring) => ring.map(frame.place));
  return { width: frame.width, height: frame.height, rings };
}

function behindWords({ venue: { settings, pegs, waters, events, sessions } }: Atlas): string {
  const say = sayIn(settings.language);
  const days = events.map(({ day }) => day).sort();
  const [first, last] = [days[0], days.at(-1)];
  const ground = say('home.ground', { pegs: pegs.length, waters: waters.length });
  if (first === undefined || last === undefined) return say('home.noEvents', { ground });
  return say('home.log', {
    ground,
    sessions: sessions.length,
    events: events.length,
    first: dayWords(first, say),
    last: dayWords(last, say),
  });
}
