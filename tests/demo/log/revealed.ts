import { type Day, monthOf } from '../../../src/domain/day.ts';
import { type Peg, pegKey } from '../../../src/domain/peg.ts';
import { type Conditions, WATER_COLOURS } from '../../../src/domain/session.ts';
import type { PegGround } from '../../../src/ratings/rated-venue.ts';
import type { BesideWorth } from '../../../src/ratings/ratings.ts';
import type { Chance } from '../chance.ts';

/** What a day and the bed add to a bag beside the peg itself: room, wind along the open water, depth by season, the edge by colour. */
export interface Revealed {
  /** What a point of a published curve truly adds, on the log scale, up to a constant of its curve. */
  readonly truthOf: (point: Pick<BesideWorth, 'of' | 'group' | 'at'>) => number;
  readonly ground: Readonly<Record<string, PegGround>>;
  on(day: Day, drawn: readonly Peg[]): { readonly wind: Conditions; readonly adds: (peg: Peg) => number };
}

interface RevealedOptions {
  readonly room: number;
  readonly wind: number | null;
  readonly depth: number | null;
  readonly colour: number | null;
}

/** A round water 120 m across, as simulated venues have it: the fetch from its bank is a chord. */
const ACROSS_METRES = 120;
/** Off the bank there is hardly any. */
const MIN_FETCH_METRES = 2;
const COMPASS = 16;
const FRESH_METRES_PER_SECOND = 5.5;

/** Draws depths once and a wind for each day. */
export function drawRevealed(
  { room, wind, depth, colour }: RevealedOptions,
  pegs: readonly Peg[],
  chance: Chance,
): Revealed {
  const ofColour = chance.apart('colour');
  const fetchOf = (peg: Peg, fromDegrees: number) =>
    Math.max(MIN_FETCH_METRES, ACROSS_METRES * Math.cos(((fromDegrees - peg.facingDegrees) * Math.PI) / 180));
  const ground = Object.fromEntries(
    pegs.map((peg): [string, PegGround] => {
      const at6Metres = chance.between(0.5, 3.5);
      return [
        pegKey(peg.water, peg.peg),
        {
          ...(wind === null
            ? {}
            : { fetchMetres: Array.from({ length: COMPASS }, (_, i) => fetchOf(peg, (360 * i) / COMPASS)) }),
          ...(depth === null && colour === null
            ? {}
            : {
                depths: {
                  atMarginMetres: colour === null ? null : ofColour.between(0.3, 1.8),
                  at6Metres: depth === null ? null : at6Metres,
                  at13Metres: depth === null ? null : at6Metres + chance.between(-0.3, 1),
                },
              }),
        },
      ];
    }),
  );
  const alongFetch = (metres: number) => Math.min(1, Math.max(0, Math.log(metres / 5) / Math.log(200 / 5)));
  const deepOf = (metres: number) => (metres - 2.25) / 3.5;
  // Coloured water makes the shallow edge good, clear water the deep one.
  const edgeOf = (metres: number, words: string) =>
    (((colour ?? 0) * (metres - 1.05)) / 1.5) * (words.startsWith('coloured') ? -1 : words.startsWith('clear') ? 1 : 0);
  return {
    truthOf({ of, group, at }) {
      if (of === 'room') return (room * at) / 4;
      if (of === 'wind') return (wind ?? 0) * alongFetch(at) * (group.startsWith('force') ? 2 : 1);
      if (of === 'colour') return edgeOf(at, group);
      return of === 'depth' && group.startsWith('at 6 m')
        ? (depth ?? 0) * deepOf(at) * (group.endsWith('winter') ? 1 : group.endsWith('summer') ? -1 : 0)
        : 0;
    },
    ground: wind === null && depth === null && colour === null ? {} : ground,
    on(day, drawn) {
      const from = wind === null ? 0 : chance.between(0, 360);
      const speed = wind === null ? 0 : Math.max(0.5, 4.5 + 2.2 * chance.normal());
      const waterColour = colour === null ? undefined : ofColour.pick(WATER_COLOURS);
      const taken = new Set(drawn.map(({ peg }) => Number(peg)));
      const emptyOn = (own: number, step: number) => (taken.has(own + step) ? 0 : taken.has(own + 2 * step) ? 1 : 2);
      return {
        wind: {
          ...(wind === null ? {} : { windFromDegrees: from, windMetresPerSecond: speed }),
          ...(waterColour === undefined ? {} : { waterColour }),
        },
        adds(peg) {
          const own = Number(peg.peg);
          const empty = room === 0 ? 0 : emptyOn(own, -1) + emptyOn(own, 1);
          const share = alongFetch(fetchOf(peg, from));
          const fresh = speed >= FRESH_METRES_PER_SECOND ? 2 : 1;
          const winter = Math.cos(((monthOf(day) - 1) * Math.PI) / 6);
          const { depths } = ground[pegKey(peg.water, peg.peg)]!;
          const deep = deepOf(depths?.at6Metres ?? 2.25);
          const edge = waterColour === undefined ? 0 : edgeOf(depths?.atMarginMetres ?? 1.05, waterColour);
          return (room * empty) / 4 + (wind ?? 0) * share * fresh + (depth ?? 0) * deep * winter + edge;
        },
      };
    },
  };
}
