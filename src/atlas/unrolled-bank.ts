import { countWords } from '../domain/count-words.ts';
import { MONTHS, type Month, monthOf } from '../domain/day.ts';
import { isCurrent } from '../domain/hazard.ts';
import { formatLength, shortDepth } from '../domain/length.ts';
import { nameOf } from '../domain/name-of.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import { formatDistance } from '../domain/place-words.ts';
import { hazardKind } from '../domain/risk.ts';
import { type BankRing, bankRings, openedAtWidestGap } from '../ground/bank-order.ts';
import type { ProfilePoint } from '../ground/survey.ts';
import { type Atlas, pegOf, surveyOfPeg } from './atlas.ts';
import { depthMarks } from './depth-marks.ts';
import { bankTiles } from './drawing/bank-tiles.ts';
import { isFolded, STRIP_LINES_METRES, type StripPeg } from './drawing/strip-peg.ts';
import type { AxisWorth } from './drawing/worth-axis.ts';
import { isClosedForEver, markOf, standingOfPeg } from './peg-verdicts.ts';
import { pegLink } from './site-link.ts';

/** One line of bank from end to end: the outline's, or an island's. */
export interface BankStretch {
  /** "Pegs 1 to 24, left to right as you face the water". */
  readonly name: string;
  /** Drawings that join to one strip. */
  readonly tiles: readonly string[];
}

/** A water's bank drawn as one long strip, and what its signs mean. */
export interface UnrolledBank {
  readonly stretches: readonly BankStretch[];
  /** Features that the strip shows, each once, for its key. */
  readonly features: readonly { readonly id: string; readonly name: string }[];
  readonly isFolded: boolean;
  /** On the day of the guide or on one that is known of. */
  readonly isSomeClosed: boolean;
  readonly isPlumbed: boolean;
  readonly isRated: boolean;
}

/** Wide enough for a phone to show one and paper two on a line. */
const PEGS_A_TILE = 7;
/** Shallower waters are not drawn as if they were deep. */
const MIN_DEEPEST_METRES = 1;
/** The line of the trade whose depth is written below the strip. */
const FIGURE_LINE_METRES = 11;

/** The bank of a water unrolled, each line of bank from its widest gap to its widest gap. */
export function unrolledBank(atlas: Atlas, waterId: string): UnrolledBank {
  const keys = (atlas.pegsByWater.get(waterId) ?? []).map(({ peg }) => pegKey(waterId, peg));
  const rings = bankRings(keys, (key) => surveyOfPeg(atlas, key).neighbours).map(openedAtWidestGap);
  const strips = rings.map((ring) => stripPegs(atlas, ring));
  const pegs = strips.flat();
  const deepestMetres = deepestOf(pegs);
  const { units, guideDay } = atlas.venue.settings;
  return {
    stretches: strips.map((strip) => ({
      name: stretchName(strip),
      tiles: bankTiles(
        {
          pegs: strip,
          nowMonth: monthOf(guideDay),
          deepestMetres,
          depthMarks: depthMarks(deepestMetres, units),
          gapWords: (metres) => formatDistance(metres, units),
        },
        PEGS_A_TILE,
      ),
    })),
    features: atlas.venue.settings.features.filter(({ id }) =>
      pegs.some(({ features }) => features.some((each) => each.id === id)),
    ),
    isFolded: pegs.some(({ gapMetres }) => gapMetres !== null && isFolded(gapMetres)),
    isSomeClosed: pegs.some(({ closed, dated }) => closed || dated !== undefined),
    isPlumbed: pegs.some(({ depthsMetres }) => depthsMetres.some((depth) => depth !== null)),
    isRated: pegs.some(({ worths }) => worths?.some((worth) => worth !== null)),
  };
}

/** The deepest water on the strip's lines, in metres. */
export function deepestOf(pegs: readonly StripPeg[]): number {
  return Math.max(MIN_DEEPEST_METRES, ...pegs.flatMap(({ depthsMetres }) => depthsMetres.map((depth) => depth ?? 0)));
}

function stretchName(strip: readonly StripPeg[]): string {
  const [first, last] = [strip[0]!, strip.at(-1)!];
  if (first === last) return `Peg ${first.peg}`;
  return `Pegs ${first.peg} to ${last.peg}, left to right as you face the water`;
}

/** The pegs of one line of bank as the strip draws them. */
export function stripPegs(atlas: Atlas, ring: BankRing): readonly StripPeg[] {
  return ring.pegs.map((key, i) => stripPeg(atlas, key, i === ring.pegs.length - 1 ? null : ring.gapMetres[i]!));
}

function stripPeg(atlas: Atlas, key: PegKey, gapMetres: number | null): StripPeg {
  const { units, features } = atlas.venue.settings;
  const peg = pegOf(atlas, key);
  const { profile } = surveyOfPeg(atlas, key);
  const standing = standingOfPeg(atlas, peg);
  const depthsMetres = STRIP_LINES_METRES.map((metres) => depthOut(profile, metres));
  const written = depthsMetres[STRIP_LINES_METRES.indexOf(FIGURE_LINE_METRES)] ?? null;
  const current = peg.hazards.filter(isCurrent);
  const own = peg.features.map((id) => ({ id, name: nameOf(features, id) }));
  const { length } = current;
  return {
    peg: peg.peg,
    href: pegLink(peg.water, peg.peg),
    label: [
      standing.closed === null ? `Peg ${peg.peg}` : `Peg ${peg.peg}, closed (${standing.closed.because})`,
      written === null ? 'not plumbed at 11 m' : `${formatLength(written, units)} at 11 m`,
      ...(length === 0 ? [] : [countWords(length, 'hazard')]),
      ...own.map(({ name }) => name.toLowerCase()),
    ].join(', '),
    ...markOf(standing),
    depthsMetres,
    figure: written === null ? '' : shortDepth(written, units),
    hazards: current.map(({ kind }) => ({ hardRule: hazardKind(kind).hardRule })),
    features: own,
    worths: isClosedForEver(standing) ? null : worthsOf(atlas, key),
    gapMetres,
  };
}

function worthsOf(atlas: Atlas, key: PegKey): readonly (AxisWorth | null)[] {
  const rows = atlas.monthsByPeg.get(key) ?? [];
  return MONTHS.map((month: Month) => {
    const row = rows.find((each) => each.month === month);
    return row === undefined ? null : { value: row.worth, low: row.low80, high: row.high80, evidence: row.evidence };
  });
}

/** The depth so far out from a peg, between the two points of its section about it; null where either is not plumbed. */
export function depthOut(profile: readonly ProfilePoint[], metres: number): number | null {
  const after = profile.findIndex(({ distanceMetres }) => distanceMetres >= metres);
  const far = profile[after];
  if (far === undefined) return null;
  if (far.distanceMetres === metres || after === 0) return far.distanceMetres === metres ? far.depthMetres : null;
  const near = profile[after - 1]!;
  if (near.depthMetres === null || far.depthMetres === null) return null;
  const share = (metres - near.distanceMetres) / (far.distanceMetres - near.distanceMetres);
  return near.depthMetres + share * (far.depthMetres - near.depthMetres);
}
