import type { Session } from '../../../src/domain/session.ts';
import type { Chance } from '../chance.ts';

/** What an angler chose at a peg. */
export type Tackle = Pick<Session, 'spot' | 'method' | 'bait' | 'linesFed'>;

/** What the choice depends on. */
export interface TackleDay {
  readonly waterDegreesC: number;
  readonly features: readonly string[];
  /** How far the bag stood above what the peg, day and angler would give, in residual standard deviations. */
  readonly luck: number;
}

/** Draws where and how an angler mostly fished. Choices that suit the day go a little with better bags. */
export function chooseTackle(day: TackleDay, chance: Chance): Tackle {
  const isWarm = day.waterDegreesC >= 13;
  const has = (feature: string) => (day.features.includes(feature) ? 1 : 0);
  const lift = Math.exp(0.35 * day.luck);
  const spot = chance.weighted<string>([
    ['margin', isWarm ? (1 + 2 * has('margin') + has('corner')) * lift : 0.3],
    ['top kit', isWarm ? 1.2 : 0.6],
    ['6 m', 1],
    ['11 m', isWarm ? 1.5 : 1.8 * lift],
    ['13 m', 1.2],
    ['16 m', 0.8],
    ['island', 2.4 * has('island') * (isWarm ? lift : 0.6)],
    ['open water', 0.5 + has('open-water')],
    ['reeds', 0.9 * has('reeds')],
  ]);
  const method = methodAt(spot, isWarm, chance);
  const bait = chance.weighted<string>(
    isWarm
      ? [
          ['pellet', 4],
          ['corn', 2],
          ['caster', 1.4],
          ['paste', 1.2],
          ['worm', 1],
          ['maggot', 1.6],
          ['soft pellet', 1.5],
        ]
      : [
          ['maggot', 4],
          ['bread', 1.2 * lift],
          ['caster', 1.5],
          ['pellet', 1.3],
          ['worm', 1.2],
          ['corn', 0.5],
          ['pinkie', 1],
        ],
  );
  return {
    spot,
    method,
    bait,
    linesFed: chance.weighted([
      [1, 1],
      [2, 3],
      [3, 4],
      [4, 1.6],
      [5, 0.4],
    ]),
  };
}

function methodAt(spot: string, isWarm: boolean, chance: Chance): string {
  if (spot === 'open water') {
    return chance.weighted<string>([
      ['feeder', 3],
      ['method feeder', 3],
      ['waggler', 2],
      ['bomb', isWarm ? 0.3 : 1.4],
    ]);
  }
  if (spot === 'island')
    return chance.weighted<string>([
      ['pole', 3],
      ['method feeder', 2],
      ['small feeder', 1],
    ]);
  if (spot === 'margin' || spot === 'top kit' || spot === 'reeds') return 'pole';
  return chance.weighted<string>([
    ['pole', 5],
    ['pole shallow', isWarm ? 2.5 : 0.2],
    ['waggler', 0.8],
  ]);
}
