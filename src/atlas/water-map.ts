import type { Units } from '../domain/bag.ts';
import { METRES_PER_FOOT } from '../domain/length.ts';
import type { MapPlace, Water } from '../domain/map.ts';
import type { Peg } from '../domain/peg.ts';
import { formatDistance } from '../domain/place-words.ts';
import { pegLabel } from '../domain/verdict-words.ts';
import { distanceMetres } from '../ground/geodesy/geodesic-between.ts';
import { standOffZone } from '../ground/stand-off-zone.ts';
import { type Atlas, surveyOfWater, waterOf } from './atlas.ts';
import { type MapDrawing, UNITS_PER_PIXEL } from './drawing/map-svg.ts';
import { FINDING } from './drawing/place-mark.ts';
import { isobathWords } from './isobath-words.ts';
import { mapFindings } from './map-findings.ts';
import { type MapFrame, mapFrame } from './map-frame.ts';
import { markOf, standingOfPeg, verdictOfPeg } from './peg-verdicts.ts';
import { pegLink } from './site-link.ts';

/** Pixels from one peg to the next at the map's natural size, so that a finger finds one of them. */
const PEG_SPACING_PIXELS = 26;
const NARROWEST_PIXELS = 340;
const WIDEST_PIXELS = 1400;
/** Room for the roundel of a peg that stands outermost. */
const PADDING_PIXELS = 34;
/** Gates and car parks farther from the bank than this would make the water small: their way is told in words. */
const PLACE_WITHIN_METRES = 80;

/** The map of a water, everything placed in user units. */
export function waterMap(atlas: Atlas, waterId: string): MapDrawing {
  const water = waterOf(atlas, waterId);
  const pegs = atlas.pegsByWater.get(waterId) ?? [];
  const { settings, waters } = atlas.venue;
  const frame = frameOf(water, pegs);
  const { place } = frame;
  const line = (positions: readonly { readonly lat: number; readonly lng: number }[]) => positions.map(place);
  // A line or a path drawn for one water may cross the map of the next.
  const overheadLines = waters.flatMap(({ map }) => map.overheadLines).filter((each) => crosses(frame, each.line));
  return {
    width: frame.width,
    height: frame.height,
    label: `Map of ${water.name}, north up, with ${pegs.length} pegs`,
    water: line(water.map.outline),
    islands: water.map.islands.map(({ ring }) => line(ring)),
    areas: water.map.areas.map(({ kind, name, ring }) => ({ kind, name: name ?? kind, ring: line(ring) })),
    isobaths: (surveyOfWater(atlas, waterId).depth?.isobaths ?? []).map(({ depthMetres, lines }) => ({
      words: isobathWords(depthMetres, settings.units.length),
      lines: lines.map(line),
    })),
    paths: waters
      .flatMap(({ map }) => map.paths)
      .filter((path) => crosses(frame, path.line))
      .map((path) => line(path.line)),
    overheadLines: overheadLines.map((each) => ({ name: each.name, line: line(each.line) })),
    standOffZones: overheadLines.flatMap((each) =>
      standOffZone(each, settings.standOff).map((rings) => rings.map(line)),
    ),
    places: [
      ...waters.flatMap(({ map }) => map.places),
      ...waters.flatMap((each) =>
        mapFindings(atlas.venue, each).map(({ at, words }) => ({ kind: FINDING, name: words, at })),
      ),
    ]
      .filter(({ at }) => frame.isInside(at))
      .map(({ kind, name, at }) => {
        const [x, y] = place(at);
        return { kind, name, x, y };
      }),
    pegs: pegs.map((peg) => {
      const [x, y] = place(peg.at);
      return {
        peg: peg.peg,
        href: pegLink(peg.water, peg.peg),
        label: pegLabel(peg.peg, verdictOfPeg(atlas, peg)),
        ...markOf(standingOfPeg(atlas, peg)),
        x,
        y,
        facingDegrees: peg.facingDegrees,
      };
    }),
    scaleBar: scaleBar(frame, settings.units),
  };
}

function frameOf(water: Water, pegs: readonly Peg[]): MapFrame {
  const ground = [...water.map.outline, ...pegs.map(({ at }) => at)];
  const outside = mapFrame(ground, PLACE_WITHIN_METRES, 1);
  const near = water.map.places.filter((each: MapPlace) => outside.isInside(each.at)).map(({ at }) => at);
  const shown = [...ground, ...near];
  const metresWide = mapFrame(shown, 0, 1).width;
  const wanted = PEG_SPACING_PIXELS / usualGapMetres(pegs);
  const pixelsPerMetre = Math.min(Math.max(wanted, NARROWEST_PIXELS / metresWide), WIDEST_PIXELS / metresWide);
  return mapFrame(shown, PADDING_PIXELS / pixelsPerMetre, pixelsPerMetre * UNITS_PER_PIXEL);
}

/** The gap to the nearest other peg that nine pegs in ten have or better; 20 m where there is no pair. */
function usualGapMetres(pegs: readonly Peg[]): number {
  const gaps = pegs.map((peg) =>
    Math.min(...pegs.filter((other) => other !== peg).map((other) => distanceMetres(peg.at, other.at))),
  );
  const sorted = gaps.filter((gap) => Number.isFinite(gap) && gap > 1).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 10)] ?? 20;
}

function crosses(frame: MapFrame, line: readonly { readonly lat: number; readonly lng: number }[]): boolean {
  const points = line.map(frame.place);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return (
    points.length > 0 &&
    Math.min(...xs) <= frame.width &&
    Math.max(...xs) >= 0 &&
    Math.min(...ys) <= frame.height &&
    Math.max(...ys) >= 0
  );
}

/** The longest round length that takes at most a third of the map. */
function scaleBar(frame: MapFrame, units: Units): MapDrawing['scaleBar'] {
  const metres = units.length === 'm' ? 1 : METRES_PER_FOOT;
  const most = frame.width / 3 / frame.unitsPerMetre / metres;
  const round = [10, 20, 50, 100, 200, 500, 1000, 2000].filter((length) => length <= most).at(-1) ?? 5;
  return { length: round * metres * frame.unitsPerMetre, words: formatDistance(round * metres, units) };
}
