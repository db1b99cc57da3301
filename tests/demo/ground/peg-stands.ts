import type { PermittedReach } from '../../../src/domain/peg.ts';
import type { StandOffRule } from '../../../src/domain/venue.ts';
import type { Chance } from '../chance.ts';
import { depthAt } from './bed.ts';
import type { DrawnWater } from './drawn-water.ts';
import { distanceInSector, farBankMetres } from './in-front.ts';
import { type LineClearance, lineClearance } from './line-clearance.ts';
import { bankPlace, bankTurnDegrees, distanceToRing } from './ring.ts';
import { distanceBetween, rounded, type Spot, spotAt } from './spot.ts';

/** A peg as the drawing gives it: where it stands, what lies in front of it and what it is. */
export interface PegStand {
  readonly peg: string;
  readonly at: Spot;
  readonly facingDegrees: number;
  readonly features: readonly string[];
  readonly clearance: LineClearance;
  /** Depths at datum straight ahead, in metres, at 0.4, 3, 6 and 11 m from the water's edge; null on land. */
  readonly depths: {
    readonly edge: number;
    readonly three: number | null;
    readonly six: number | null;
    readonly eleven: number | null;
  };
  readonly farBankMetres: number;
  readonly islandMetres: number | null;
  readonly reedsMetres: number | null;
  readonly liliesMetres: number | null;
  /** How sharply the bank turns here. */
  readonly turnDegrees: number;
}

const CORNER_TURN_DEGREES = 55;
const POINT_TURN_DEGREES = -40;
const ISLAND_REACH_METRES = 26;
const OPEN_WATER_METRES = 45;
const SHALLOW_EDGE_METRES = 0.9;

/** Stands the pegs of a drawn water on its bank and works out their features from the drawing. */
export function standPegs(
  water: DrawnWater,
  rule: StandOffRule,
  permitted: PermittedReach,
  chance: Chance,
): PegStand[] {
  const bare = water.pegsAlong.map((along, i) => bareStand(water, along, i, rule, permitted));
  const sixes = bare.map((stand) => stand.depths.six ?? 0).sort((a, b) => a - b);
  // "Deep" is said against the water's own pegs: the deepest third.
  const deepMetres = sixes[Math.floor(sixes.length * 0.67)] ?? 0;
  return bare.map((stand) => ({
    ...stand,
    features: featuresOf(water, stand, deepMetres, permitted, chance.apart(stand.peg)),
  }));
}

function bareStand(
  water: DrawnWater,
  along: number,
  index: number,
  rule: StandOffRule,
  permitted: PermittedReach,
): PegStand {
  const place = bankPlace(water.outline, along);
  const facingDegrees = Math.round(place.inwardDegrees) % 360;
  const at = spotAt(place.at, place.inwardDegrees + 180, water.setBackMetres);
  const depth = (metres: number) => depthAt(water, spotAt(place.at, facingDegrees, metres));
  const nearest = (kind: string) => {
    const found = water.areas
      .filter((area) => area.kind === kind)
      .map((area) => distanceInSector(at, facingDegrees, permitted.sectorDegrees, area.ring))
      .filter((metres) => metres !== null);
    return found.length === 0 ? null : Math.min(...found);
  };
  const islands = water.islands
    .map((island) => distanceInSector(at, facingDegrees, permitted.sectorDegrees, island.ring))
    .filter((metres) => metres !== null);
  return {
    peg: String(index + 1),
    at,
    facingDegrees,
    features: [],
    clearance: lineClearance(at, facingDegrees, water.overheadLines, rule, permitted),
    depths: { edge: rounded(depth(0.4) ?? 0.3, 2), three: depth(3), six: depth(6), eleven: depth(11) },
    farBankMetres: farBankMetres(at, facingDegrees, water.outline),
    islandMetres: islands.length === 0 ? null : Math.min(...islands),
    reedsMetres: nearest('reeds'),
    liliesMetres: nearest('lilies'),
    turnDegrees: bankTurnDegrees(water.outline, along, 30),
  };
}

function featuresOf(
  water: DrawnWater,
  stand: PegStand,
  deepMetres: number,
  permitted: PermittedReach,
  chance: Chance,
): string[] {
  const features: string[] = [];
  const isBare = () => features.every((feature) => feature === 'margin');
  const nearPlace = (kind: string, metres: number) =>
    water.places.some((place) => place.kind === kind && distanceBetween(place.at, stand.at) <= metres);
  const besideArea = (kind: string, metres: number) =>
    water.areas.some((area) => area.kind === kind && distanceToRing(area.ring, stand.at) <= metres);
  if (stand.turnDegrees >= CORNER_TURN_DEGREES) features.push('corner');
  if (stand.turnDegrees <= POINT_TURN_DEGREES) features.push('point');
  if (water.bays.some((bay) => distanceBetween(bay.at, stand.at) <= bay.radiusMetres)) features.push('bay');
  if (stand.islandMetres !== null && stand.islandMetres <= ISLAND_REACH_METRES) features.push('island');
  if (chance.happens(0.42) && stand.depths.edge <= SHALLOW_EDGE_METRES) features.push('margin');
  if (besideArea('reeds', 8)) features.push('reeds');
  if ((stand.liliesMetres ?? Number.POSITIVE_INFINITY) <= 14) features.push('lilies');
  if (besideArea('trees', 10)) features.push('overhang');
  if (nearPlace('inlet', 18)) features.push('inlet');
  if (nearPlace('aerator', permitted.castMetres * 0.8)) features.push('aerator');
  if (isBare() && stand.farBankMetres >= OPEN_WATER_METRES) features.push('open-water');
  if ((stand.depths.six ?? 0) >= deepMetres) features.push('deep-water');
  if (chance.happens(0.28)) features.push('near-shelf');
  return features;
}
