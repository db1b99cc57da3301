import type { Hazard } from '../../../src/domain/hazard.ts';
import type { Peg } from '../../../src/domain/peg.ts';
import type { PegStand } from '../ground/peg-stands.ts';
import { type BankCalendar, lastVisit } from './bank-calendar.ts';

/** Figures of the record that hazards follow from. */
export type BankFigures = Pick<Peg, 'bank' | 'platform' | 'marginDepthMetres'>;

/** Lines nearer than this are named on the sheet even where the peg is clear of them. */
const LINE_NAMED_METRES = 75;
const STEEP_DEGREES = 24;
const DEEP_EDGE_METRES = 0.8;
const HIGH_PLATFORM_METRES = 0.6;

/** Hazards that follow from what the record says of a peg: line, slope, depth, drop, clay. */
export function hazardsOfRecord(
  water: string,
  stand: PegStand,
  figures: BankFigures,
  calendar: BankCalendar,
): Hazard[] {
  const hazards: Hazard[] = [];
  const checkedOn = lastVisit(calendar, water, stand.peg).day;
  const first = calendar.rounds[0]!;
  const known = { foundOn: first.day, checkedOn, round: first.ref };
  const line = stand.clearance.platformMetres;
  const onMap = stand.clearance.nearestLine === null ? {} : { line: stand.clearance.nearestLine };
  const slope = figures.bank?.slopeDegrees ?? 0;
  if (!stand.clearance.open) {
    hazards.push({
      kind: 'overhead-line',
      place: 'over and behind the peg',
      action: 'Do not fish here, do not tackle up here. Pass by with rods low and level, in the bag.',
      control: 'Peg closed and its post sawn off; signs on both sides',
      severity: 5,
      likelihood: 4,
      severityAfter: 5,
      likelihoodAfter: 1,
      ...onMap,
      ...known,
    });
  } else if (line < LINE_NAMED_METRES) {
    hazards.push({
      kind: 'overhead-line',
      place: `about ${Math.round(line)} m off`,
      action: 'Stay on the peg and in front of it; carry rods low and level when you walk on.',
      control: 'Stand-off taped and pegged out',
      severity: 5,
      likelihood: 2,
      severityAfter: 5,
      likelihoodAfter: 1,
      ...onMap,
      ...known,
    });
  }
  if (slope >= STEEP_DEGREES) {
    const steps = figures.bank?.steps ?? 0;
    hazards.push({
      kind: 'steep-bank',
      place: 'the whole bank down to the platform',
      ...(steps > 0 ? { action: `Use the ${steps} steps and make two journeys with the kit.` } : {}),
      ...(steps > 0 ? { control: 'Steps cut and boarded' } : {}),
      severity: 3,
      likelihood: 3,
      severityAfter: 3,
      likelihoodAfter: steps > 0 ? 2 : 3,
      ...known,
    });
  }
  if ((figures.marginDepthMetres ?? 0) >= DEEP_EDGE_METRES) {
    hazards.push({
      kind: 'deep-margin',
      place: 'from the front of the platform',
      severity: 4,
      likelihood: 2,
      ...known,
    });
  }
  if ((figures.platform?.heightAboveWaterMetres ?? 0) >= HIGH_PLATFORM_METRES) {
    hazards.push({ kind: 'unprotected-edge', place: 'front of the platform', severity: 3, likelihood: 2, ...known });
  }
  if (figures.bank?.surface === 'clay') {
    hazards.push({
      kind: 'slippery',
      place: 'the clay between path and platform',
      action: 'Boots with grip; after rain come down sideways.',
      severity: 2,
      likelihood: 4,
      severityAfter: 2,
      likelihoodAfter: 3,
      ...known,
    });
  }
  return hazards;
}
