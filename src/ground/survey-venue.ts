import { type Month, yearOf } from '../domain/day.ts';
import type { MapPlace, Water } from '../domain/map.ts';
import { type Peg, type PegKey, pegKey } from '../domain/peg.ts';
import type { Venue } from '../domain/venue.ts';
import { accessFindings } from './access-findings.ts';
import type { DatumSoundings } from './depth/datum-soundings.ts';
import type { DepthSurface } from './depth/depth-surface.ts';
import { latestLevel } from './depth/level-on-day.ts';
import { localPlane } from './geodesy/local-plane.ts';
import { depthProfile, lineDepths } from './line-depths.ts';
import { linesOfPeg } from './lines-of-peg.ts';
import { gridReference } from './national-grid.ts';
import { neighboursOf } from './neighbours.ts';
import type { PegStand } from './peg-stand.ts';
import { type ReachMarks, reachMarks, reachTargets } from './reach-targets.ts';
import { overheadLinesOf, standOffsOfPeg } from './stand-off.ts';
import { type SunDay, sunByMonth, sunYear } from './sun-at-peg.ts';
import type { Neighbour, PegSurvey, Survey, WaterSurvey } from './survey.ts';
import { gatesOfPeg } from './walk/gates-of-peg.ts';
import { nearestPlace } from './walk/nearest-place.ts';
import { venueWalks } from './walk/venue-walks.ts';
import { wayPaths } from './walk/way-paths.ts';
import { waterDepths } from './water-depths.ts';
import type { WaterPlane } from './water-plane.ts';
import { windsAtPeg } from './wind-at-peg.ts';

/** One water laid out, with everything its pegs need. */
interface SurveyedWater {
  readonly plane: WaterPlane;
  readonly surface: DepthSurface | null;
  readonly stands: ReadonlyMap<PegKey, PegStand>;
  readonly neighbours: ReadonlyMap<PegKey, readonly Neighbour[]>;
  readonly marks: ReachMarks;
  readonly sunYear: ReadonlyMap<Month, SunDay>;
  readonly survey: WaterSurvey;
}

/**
 * Surveys a checked venue: all that follows from where things are. Pure and deterministic; every peg must be of one of
 * the waters and every outline simple, which the readers of the venue folder see to.
 */
export function surveyVenue(venue: Venue): Survey {
  const waters = new Map(venue.waters.map((water) => [water.id, surveyedWater(water, venue)]));
  const survey = pegSurveyor(venue, waters);
  return {
    waters: Object.fromEntries([...waters].map(([id, water]) => [id, water.survey])),
    pegs: Object.fromEntries(venue.pegs.map((peg) => [pegKey(peg.water, peg.peg), survey(peg)])),
  };
}

function surveyedWater(water: Water, venue: Venue): SurveyedWater {
  const { plane, stands, levels, soundings, surface } = waterDepths(water, venue);
  const timeZone = gridReference(plane.plane.centre) === null ? 'UTC' : 'Europe/London';
  const pegs = venue.pegs.filter((peg) => peg.water === water.id);
  return {
    plane,
    surface,
    stands,
    neighbours: neighboursOf(pegs, stands, plane),
    marks: reachMarks(plane, water.map.areas, water.map.places),
    sunYear: sunYear(yearOf(venue.settings.guideDay), plane.plane.centre, timeZone),
    survey: {
      areaSquareMetres: plane.areaSquareMetres,
      depth: surface === null ? null : asDepth(surface, soundings, plane),
      level: latestLevel(levels, venue.settings.guideDay),
      timeZone,
    },
  };
}

function asDepth(
  surface: DepthSurface,
  soundings: DatumSoundings,
  { plane }: WaterPlane,
): NonNullable<WaterSurvey['depth']> {
  return {
    meanMetres: surface.meanMetres,
    maximumMetres: surface.maximumMetres,
    volumeCubicMetres: surface.volumeCubicMetres,
    soundings: soundings.used.length,
    uncorrected: soundings.uncorrected,
    plumbedShare: surface.plumbedShare,
    unused: soundings.unused,
    isobaths: surface.isobaths.map(({ depthMetres, lines }) => ({
      depthMetres,
      lines: lines.map((line) => line.map(plane.toPosition)),
    })),
  };
}

/** Prepares what pegs share, and surveys one peg after the other. */
function pegSurveyor(venue: Venue, waters: ReadonlyMap<string, SurveyedWater>): (peg: Peg) => PegSurvey {
  const { settings } = venue;
  const lines = overheadLinesOf(venue.waters);
  const middle = [...waters.values()][0]?.plane.plane.centre ?? { lat: 0, lng: 0 };
  const { toPlane } = localPlane(middle);
  const walks = venueWalks(venue.waters, settings.standOff, toPlane);
  const places = venue.waters.flatMap((water) => water.map.places);
  const gates = places.filter(({ kind }) => kind === 'gate');
  const nearest = (candidates: readonly MapPlace[]) => nearestPlace(candidates, walks.graph, toPlane);
  const gatesOf = gatesOfPeg(gates, nearest);
  // Nobody is sent to kit that is known to be missing.
  const inPlace = places.filter(({ kit }) => kit !== 'missing');
  const nearestAed = nearest(inPlace.filter(({ kind }) => kind === 'aed'));
  const nearestThrowLine = nearest(inPlace.filter(({ kind }) => kind === 'throw-line'));
  const wayPathsOf = wayPaths(venue.waters, walks.graph, toPlane, walks.below);

  return (peg) => {
    const key = pegKey(peg.water, peg.peg);
    const { plane, surface, stands, neighbours, marks, sunYear: sun } = waters.get(peg.water)!;
    const stand = stands.get(key)!;
    const ways = walks.walksTo(peg);
    const standOffs = standOffsOfPeg(peg, lines, settings);
    const gatesOfThis = gatesOf(peg.at);
    const kit = [nearestAed(peg.at), nearestThrowLine(peg.at)] as const;
    const helpFrom = [gatesOfThis.best, gatesOfThis.atNight, ...kit].flatMap((near) => near?.place ?? []);
    return {
      gridReference: gridReference(peg.at),
      standOffs,
      lines: linesOfPeg(peg, lines, settings, standOffs),
      reach: reachTargets(stand, plane, marks),
      neighbours: neighbours.get(key) ?? [],
      lineDepths: lineDepths(peg, stand, surface),
      profile: depthProfile(stand, surface),
      sun: sunByMonth(peg.facingDegrees, sun),
      wind: windsAtPeg(peg.facingDegrees, stand, plane),
      walks: ways,
      wayPaths: wayPathsOf(peg.at, helpFrom),
      accessFindings: accessFindings(peg, ways, walks.stepFreeWalkTo(peg), settings),
      gates: gatesOfThis,
      nearestAed: kit[0],
      nearestThrowLine: kit[1],
      edgeMetres: plane.shoreIndex.nearest(stand.at)!.distanceMetres,
      facesWater: stand.edgeMetres !== null,
    };
  };
}
