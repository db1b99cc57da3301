import { lineDistanceWords, lineHeightWords, voltageWords } from '../domain/overhead-line-words.ts';
import { pegKey } from '../domain/peg.ts';
import { countsMetres } from '../ground/stand-off.ts';
import type { Atlas } from './atlas.ts';
import { limitWords } from './peg-safety.ts';
import { type PegStanding, standingOfPeg } from './peg-verdicts.ts';
import { pegLink } from './site-link.ts';

/** How one peg stands to an overhead line. */
export interface LinePegRow {
  readonly peg: string;
  readonly href: string;
  readonly mapped: string;
  /** What counts: platform or swept area, whichever is nearer, after the allowances. */
  readonly counts: string;
  readonly standing: PegStanding;
  readonly isLimited: boolean;
  /** "pole to 11 m, no cast beyond 20 m"; empty where the peg is not limited. */
  readonly limits: string;
}

/** One overhead line with every peg near it, the nearest first. */
export interface LinePegs {
  readonly id: string;
  readonly name: string;
  /** Voltage, and height where the map has one: both explain and decide nothing. */
  readonly voltage: string;
  readonly rows: readonly LinePegRow[];
}

/** Pegs whose swept area stays farther than this need no row. */
const LISTED_WITHIN_METRES = 60;

/** Every overhead line of the venue and how the pegs near it stand to it: closed, limited, or clear. */
export function linePegs(atlas: Atlas): readonly LinePegs[] {
  const lines = atlas.venue.waters.flatMap(({ map }) => map.overheadLines);
  const named = [...new Map(lines.map((line) => [line.id, line])).values()];
  const { units } = atlas.venue.settings;
  return named.map((line) => {
    const height = lineHeightWords(line, units);
    return {
      id: line.id,
      name: line.name,
      voltage: `${voltageWords(line)}${height === null ? '' : `; ${height}`}`,
      rows: rowsOf(atlas, line.id),
    };
  });
}

function rowsOf(atlas: Atlas, line: string): readonly LinePegRow[] {
  const near = atlas.venue.pegs.flatMap((peg) => {
    const standOffs = atlas.survey.pegs[pegKey(peg.water, peg.peg)]?.standOffs ?? [];
    const standOff = standOffs.find((candidate) => candidate.line === line);
    return standOff !== undefined && countsMetres(standOff) < LISTED_WITHIN_METRES ? [{ peg, standOff }] : [];
  });
  const { settings } = atlas.venue;
  const distance = (metres: number) => lineDistanceWords(metres, settings.units);
  return near
    .sort((a, b) => countsMetres(a.standOff) - countsMetres(b.standOff))
    .map(({ peg, standOff }) => {
      const limits = limitWords(peg, settings);
      return {
        peg: `${atlas.watersById.get(peg.water)?.name ?? peg.water} ${peg.peg}`,
        href: pegLink(peg.water, peg.peg),
        mapped: distance(standOff.mappedMetres),
        counts: distance(countsMetres(standOff)),
        standing: standingOfPeg(atlas, peg),
        isLimited: limits.length > 0,
        limits: limits.join(', '),
      };
    });
}
