import { pegKey } from '../domain/peg.ts';
import { type Atlas, surveyOfPeg } from './atlas.ts';
import { throwLineNear } from './peg-emergency.ts';
import { markOf, standingOfPeg } from './peg-verdicts.ts';

/** How a peg stands that is closed or whose verdict changes with the day; nothing for one that is open on every day. */
export type PlaceMark = ReturnType<typeof markOf>;

/** Where the pegs of every water stand, for a phone that wants to know which it is at. */
export type PegPlaces = readonly {
  readonly water: string;
  /** The number on the post, latitude, longitude, the nearest throw line with the walk to it. */
  readonly pegs: readonly (readonly [peg: string, lat: number, lng: number, throwLine: string, mark?: PlaceMark])[];
}[];

/** Five decimals are a metre: nearer than any phone knows. */
const DECIMALS = 5;

/** Collects them, water by water. */
export function pegPlaces(atlas: Atlas): PegPlaces {
  const rounded = (degrees: number) => Number(degrees.toFixed(DECIMALS));
  return atlas.venue.waters.map(({ id, name }) => ({
    water: name,
    pegs: (atlas.pegsByWater.get(id) ?? []).map((peg) => {
      const mark = markOf(standingOfPeg(atlas, peg));
      const isPlain = !mark.closed && mark.dated === undefined;
      const { words } = throwLineNear(surveyOfPeg(atlas, pegKey(peg.water, peg.peg)), atlas.venue);
      const place = [peg.peg, rounded(peg.at.lat), rounded(peg.at.lng), words] as const;
      return isPlain ? place : ([...place, mark] as const);
    }),
  }));
}
