import type { Peg } from '../domain/peg.ts';
import { SHIPPED_THRESHOLDS } from '../domain/shipped-thresholds.ts';
import type { Threshold, VenueSettings } from '../domain/venue.ts';
import type { AccessFinding, Walk, WalkFact } from './survey.ts';

const NOT_RECORDED = 'not recorded';
const BY_THE_WORD = 'What the word means; no figure is needed';

/**
 * Holds a record's claim to be accessible against the venue's thresholds (shipped: US federal guidelines, since no UK
 * figure for a fishing platform has been read), and a claim to be step-free against the drawn paths. Empty where nothing
 * is claimed, or every claim stands. A figure that is not recorded is a finding too: a claim stands on figures.
 * `stepFreeWalk` is the shortest way from a car park without a known step, `walks` are the shortest ways of all.
 */
export function accessFindings(
  peg: Peg,
  walks: readonly Walk[],
  stepFreeWalk: Walk | null,
  settings: Pick<VenueSettings, 'thresholds'>,
): readonly AccessFinding[] {
  const { access } = peg;
  if (access?.accessible !== true && access?.stepFree !== true) return [];
  const stepFindings = steps(peg, walks, stepFreeWalk);
  if (access.accessible !== true) return stepFindings;
  return [...stepFindings, ...wayFigures(stepFreeWalk, settings), ...platformFigures(peg, settings)];
}

function steps(peg: Peg, walks: readonly Walk[], stepFreeWalk: Walk | null): readonly AccessFinding[] {
  const finding = (found: string): AccessFinding[] => [
    { what: 'Way from a car park', found, needed: 'a way without steps', source: BY_THE_WORD },
  ];
  const [shortest] = walks;
  if (shortest === undefined) return finding('no drawn path joins it to a car park');
  const bankSteps = peg.bank?.steps ?? 0;
  if (bankSteps > 0) return finding(`${bankSteps} ${bankSteps === 1 ? 'step' : 'steps'} on its own bank`);
  if (stepFreeWalk === null)
    return finding(shortest.steps > 0 ? `${shortest.steps} steps from ${shortest.from}` : 'steps on every way');
  return stepFreeWalk.stepFree === true ? [] : finding('steps not recorded on every path of the way');
}

/** Gradient and width of the way without steps, its worst piece. */
function wayFigures(walk: Walk | null, settings: Pick<VenueSettings, 'thresholds'>): readonly AccessFinding[] {
  if (walk === null) return [];
  const gradient = threshold('accessible-path-gradient', settings);
  const width = threshold('accessible-path-width', settings);
  return [
    ...figure('Steepest path on the way', walk.steepest, isStated(walk, 'gradient'), gradient, 'at most', asGradient),
    ...figure('Narrowest path on the way', walk.narrowestMetres, isStated(walk, 'width'), width, 'at least', asMetres),
  ];
}

function platformFigures(peg: Peg, settings: Pick<VenueSettings, 'thresholds'>): readonly AccessFinding[] {
  const { widthMetres, lengthMetres, railHeightMetres, edgeProtection } = peg.platform ?? {};
  const rail = threshold('accessible-rail-height', settings);
  const turning = threshold('accessible-turning-space', settings);
  const space = widthMetres === undefined || lengthMetres === undefined ? null : Math.min(widthMetres, lengthMetres);
  return [
    ...figure('Space to turn on the platform', space, space !== null, turning, 'at least', asMetres),
    // A platform without a rail may be accessible; a rail, where there is one, must be low enough to fish over.
    ...(railHeightMetres === undefined ? [] : figure('Rail height', railHeightMetres, true, rail, 'at most', asMetres)),
    ...(edgeProtection === true
      ? []
      : [
          {
            what: 'Edge of the platform',
            found: edgeProtection === false ? 'none' : NOT_RECORDED,
            needed: 'a kerb, or deck beyond the rail',
            source: 'ADA Standards for Accessible Design 2010, section 1005.3 (the section read, its figures not)',
          },
        ]),
  ];
}

/** A finding where the worst known figure fails, or where none fails but not all are known. */
function figure(
  what: string,
  worst: number | null,
  isAllKnown: boolean,
  { value, source }: Threshold,
  bound: 'at most' | 'at least',
  written: (value: number) => string,
): readonly AccessFinding[] {
  const needed = `${bound} ${written(value)}`;
  const fails = worst !== null && (bound === 'at most' ? worst > value : worst < value);
  if (fails) return [{ what, found: written(worst), needed, source }];
  return isAllKnown && worst !== null ? [] : [{ what, found: NOT_RECORDED, needed, source }];
}

function isStated(walk: Walk, fact: WalkFact): boolean {
  return !walk.notStated.includes(fact);
}

/** The venue's own figure, or the shipped one: a venue read from its folder always has one. */
function threshold(id: string, { thresholds }: Pick<VenueSettings, 'thresholds'>): Threshold {
  const found = [...thresholds, ...SHIPPED_THRESHOLDS].find((candidate) => candidate.id === id);
  if (found === undefined) throw new RangeError(`accessFindings: no threshold "${id}" is shipped`);
  return found;
}

function asMetres(metres: number): string {
  return `${Math.round(metres * 1000) / 1000} m`;
}

function asGradient(rise: number): string {
  return rise <= 0 ? 'level' : `1 in ${Math.round(10 / rise) / 10}`;
}
