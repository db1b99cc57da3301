import type { Bank, Peg, Platform, ReachClaim } from '../../../src/domain/peg.ts';
import type { LatLng } from '../../../src/domain/place.ts';
import type { Chance } from '../chance.ts';
import type { DrawnWater } from '../ground/drawn-water.ts';
import type { PegStand } from '../ground/peg-stands.ts';
import { distanceToLine, rounded, type Spot } from '../ground/spot.ts';
import type { BankCalendar } from './bank-calendar.ts';
import { hazardsOfRecord } from './hazards.ts';
import { whereOf } from './where.ts';

const CLOSED_REASON = 'Below or beside the 11 kV overhead line, inside the stand-off.';

/** A peg's record as the bailiff would have measured it, before notes, pictures and clearance are put to it. */
export function pegRecord(
  water: DrawnWater,
  stand: PegStand,
  place: (spot: Spot) => LatLng,
  calendar: BankCalendar,
  chance: Chance,
): Peg {
  // Drawn first, so that a path redrawn later moves no other figure.
  const isStepFree = chance.happens(water.bank.stepFreeShare) && hasStepFreePath(water, stand);
  const bank = bankOf(water, isStepFree, chance);
  const platform = platformOf(water, isStepFree, chance);
  const marginDepthMetres = stand.depths.edge;
  const isAccessible = isStepFree && (platform.widthMetres ?? 0) >= 1.8 && chance.happens(0.3);
  return {
    water: water.id,
    peg: stand.peg,
    at: place(stand.at),
    facingDegrees: stand.facingDegrees,
    where: whereOf(water, stand),
    features: stand.features,
    ...(stand.clearance.open
      ? { status: 'open' as const }
      : { status: 'closed' as const, statusReason: CLOSED_REASON, statusSince: calendar.closedSince }),
    platform: {
      ...platform,
      ...(isAccessible
        ? { railHeightMetres: chance.pick([0.82, 0.86, 0.9]), edgeProtection: chance.happens(0.8) }
        : {}),
      // The demo takes every position where the angler sits.
      ...(platform.lengthMetres === undefined ? {} : { measuredAt: 'water-end' as const }),
    },
    bank,
    access: {
      stepFree: isStepFree,
      pathSurface: isStepFree ? 'stone' : bank.surface === 'clay' ? 'grass and clay' : 'grass',
      accessible: isAccessible,
    },
    reach: reachOf(stand, chance),
    marginDepthMetres,
    limits: stand.clearance.limits,
    hazards: hazardsOfRecord(water.id, stand, { bank, platform, marginDepthMetres }, calendar),
    photos: [],
    notes: [],
    file: `pegs/${water.id}/${stand.peg}.md`,
  };
}

function hasStepFreePath(water: DrawnWater, stand: PegStand): boolean {
  const nearest = water.paths.reduce((best, path) =>
    distanceToLine(stand.at, path.line) < distanceToLine(stand.at, best.line) ? path : best,
  );
  return nearest.stepFree === true;
}

function bankOf(water: DrawnWater, isStepFree: boolean, chance: Chance): Bank {
  const oneIn = isStepFree ? Math.max(6, ...water.bank.slopes) : chance.pick(water.bank.slopes);
  const heightMetres = rounded(chance.between(...water.bank.heightMetres) * (isStepFree ? 0.6 : 1), 1);
  const slopeDegrees = (Math.atan(1 / oneIn) * 180) / Math.PI;
  const steps = isStepFree || oneIn > 3 ? 0 : Math.round(heightMetres / 0.19);
  return {
    slopeDegrees,
    heightMetres,
    surface: isStepFree ? 'stone' : chance.pick(water.bank.surfaces),
    ...(steps > 0 ? { steps, handrail: chance.happens(0.3) } : {}),
  };
}

function platformOf(water: DrawnWater, isStepFree: boolean, chance: Chance): Platform {
  const kind = isStepFree ? chance.pick(['slabbed', 'recycled plastic']) : chance.pick(water.bank.platforms);
  if (kind.startsWith('none')) return { kind };
  return {
    kind,
    widthMetres: isStepFree ? chance.pick([1.8, 2, 2.4]) : chance.pick([1.2, 1.5, 1.5, 1.8]),
    lengthMetres: chance.pick([1.5, 1.8, 2, 2.4]),
    heightAboveWaterMetres: rounded(chance.between(...water.bank.platformHeightMetres), 2),
    condition: chance.weighted([
      ['sound', 8],
      ['sound, mesh worn', 2],
      ['one board springs', 1],
    ]),
  };
}

/** What the record claims lies in front: measured by a person, so not to the centimetre. */
function reachOf(stand: PegStand, chance: Chance): ReachClaim[] {
  const claims: ReachClaim[] = [];
  const claim = (what: string, metres: number | null) => {
    if (metres !== null)
      claims.push({ what, distanceMetres: Math.max(0.5, rounded(metres + chance.between(-0.7, 0.7), 1)) });
  };
  if (stand.features.includes('island')) claim('island', stand.islandMetres);
  if ((stand.reedsMetres ?? Number.POSITIVE_INFINITY) <= 20) claim('reeds', stand.reedsMetres);
  if (stand.features.includes('lilies')) claim('lilies', stand.liliesMetres);
  if (stand.features.includes('near-shelf')) claim('shelf', chance.between(2, 5));
  return claims;
}
