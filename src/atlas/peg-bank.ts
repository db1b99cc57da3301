import type { Units } from '../domain/bag.ts';
import { CLEARANCE_MEASURES } from '../domain/clearance-measures.ts';
import { countWords } from '../domain/count-words.ts';
import { formatDay } from '../domain/day.ts';
import { formatLength } from '../domain/length.ts';
import type { Peg } from '../domain/peg.ts';
import { formatDistance } from '../domain/place-words.ts';
import type { PegSurvey, Walk, WalkFact } from '../ground/survey.ts';

/** A line of a facts list. */
export interface Fact {
  readonly name: string;
  readonly words: string;
}

/** What the record says of platform, bank, room and path. What nobody recorded reads "not known". */
export function bankFacts(peg: Peg, units: Units): readonly Fact[] {
  return [
    { name: 'Platform', words: platformWords(peg, units) },
    { name: 'Bank', words: bankWords(peg, units) },
    { name: 'Swim width', words: clearanceWords(peg, units) },
    { name: 'Path', words: pathWords(peg, units) },
  ];
}

function platformWords({ platform }: Peg, units: Units): string {
  if (platform === undefined) return 'not known';
  const { widthMetres, lengthMetres, heightAboveWaterMetres, railHeightMetres } = platform;
  const size = [widthMetres, lengthMetres].flatMap((side) => (side === undefined ? [] : [formatLength(side, units)]));
  return sentence([
    platform.kind,
    size.length > 0 && size.join(' by '),
    heightAboveWaterMetres !== undefined && `${formatLength(heightAboveWaterMetres, units)} above the water`,
    railHeightMetres !== undefined && `rail ${formatLength(railHeightMetres, units)} high`,
    platform.edgeProtection === true && 'edge protected',
    platform.condition ?? (platform.kind.startsWith('none') ? false : 'condition not known'),
  ]);
}

function bankWords({ bank }: Peg, units: Units): string {
  if (bank === undefined) return 'not known';
  return sentence([
    bank.slopeDegrees !== undefined && `slopes ${slopeWords(bank.slopeDegrees)}`,
    bank.heightMetres !== undefined && `${formatLength(bank.heightMetres, units)} high`,
    bank.surface,
    bank.steps !== undefined && bank.steps > 0 && countWords(bank.steps, 'step'),
    bank.handrail === true && 'handrail',
    bank.handrail === false && bank.steps !== undefined && bank.steps > 0 && 'no handrail',
  ]);
}

function clearanceWords({ clearance }: Peg, units: Units): string {
  if (clearance === undefined) return 'not known';
  const { measuredOn } = clearance;
  return sentence([
    ...CLEARANCE_MEASURES.map(({ field, name, onSheet }) => {
      const metres = clearance[field];
      if (metres === undefined || onSheet === 'with-path') return false;
      return onSheet === 'alone' ? formatLength(metres, units, 1) : `${name} ${formatLength(metres, units)}`;
    }),
    measuredOn !== undefined && `measured ${formatDay(measuredOn)}`,
  ]);
}

function pathWords({ access, clearance }: Peg, units: Units): string {
  const width = clearance?.pathWidthMetres;
  return sentence([
    access?.pathSurface,
    width !== undefined && `${formatLength(width, units)} wide`,
    stepFreeWords(access?.stepFree),
  ]);
}

/** A way to the peg as words: `140 m, 9 steps, steepest 1 in 12, not step-free`. What a path does not state is not made up. */
export function walkWords(walk: Walk, units: Units): string {
  const { steepest, narrowestMetres, notStated, stepFreeMetres } = walk;
  const stated = (fact: WalkFact) => (notStated.includes(fact) ? ' stated' : '');
  return sentence([
    formatDistance(walk.distanceMetres, units),
    walk.steps > 0 && countWords(walk.steps, 'step'),
    steepest !== null && steepest > 0 && `steepest${stated('gradient')} 1 in ${Math.round(1 / steepest)}`,
    narrowestMetres !== null && `narrowest${stated('width')} ${formatLength(narrowestMetres, units)}`,
    stepFreeWords(walk.stepFree),
    stepFreeMetres !== undefined && `a way without known steps is ${formatDistance(stepFreeMetres, units)}`,
  ]);
}

function stepFreeWords(stepFree: boolean | null | undefined): string {
  if (stepFree === null || stepFree === undefined) return 'steps not known';
  return stepFree ? 'step-free' : 'not step-free';
}

/**
 * The walks worth telling: the shortest one, and the shortest step-free one where that is another. A way that passes an
 * overhead line is among them only where every way does.
 */
export function walksWorthTelling({ walks }: Pick<PegSurvey, 'walks'>): readonly Walk[] {
  const clear = walks.filter(({ underLines }) => underLines.length === 0);
  const among = clear.length > 0 ? clear : walks;
  const told = [among[0], among.find(({ stepFree }) => stepFree === true)];
  return [...new Set(told.filter((walk) => walk !== undefined))];
}

/** What to do on a way that passes an overhead line: the same on each. */
export const WAY_UNDER_LINE_ACTION =
  'Carry rods and poles low and level, taken down and in the bag. Set up and take down at the water’s edge.';

/** The ways that pass an overhead line where another does not: told where the walk is, so that nobody takes one unwarned. */
export function waysUnderLines({ walks }: Pick<PegSurvey, 'walks'>): readonly Fact[] {
  if (walks.every(({ underLines }) => underLines.length > 0)) return [];
  return walks
    .filter(({ underLines }) => underLines.length > 0)
    .map(({ from, underLines }) => ({
      name: `From ${from}`,
      words: `passes an overhead line (${underLines.join(', ')}). ${WAY_UNDER_LINE_ACTION}`,
    }));
}

/** A slope as it is spoken of, with its angle: `1 in 2 (27°)`; "1 in N" is one up for N along. */
export function slopeWords(degrees: number): string {
  const run = 1 / Math.tan((degrees * Math.PI) / 180);
  if (degrees < 1) return 'level';
  return `1 in ${run < 3 ? Math.round(run * 10) / 10 : Math.round(run)} (${Math.round(degrees)}°)`;
}

function sentence(parts: readonly (string | false | undefined)[]): string {
  const words = parts.filter((part) => typeof part === 'string' && part !== '').join(', ');
  return words === '' ? 'not known' : words;
}
