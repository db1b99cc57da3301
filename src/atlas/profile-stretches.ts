import type { PegSurvey, ProfilePoint } from '../ground/survey.ts';

/** Land across the section, from one distance out to another. */
export interface LandStretch {
  readonly from: number;
  readonly to: number;
  readonly words: string;
}

/** Land ahead of the peg beyond its own bank, called by what the map has there. */
export function landStretches({ profile, reach }: PegSurvey): readonly LandStretch[] {
  const firstWater = profile.findIndex(({ land }) => !land);
  const stretches: { from: number; to: number; words: string }[] = [];
  let open = false;
  for (const point of firstWater === -1 ? [] : profile.slice(firstWater)) {
    if (!point.land) {
      open = false;
    } else if (open) {
      stretches.at(-1)!.to = point.distanceMetres;
    } else {
      open = true;
      stretches.push({ from: point.distanceMetres, to: point.distanceMetres, words: '' });
    }
  }
  const end = profile.at(-1)?.distanceMetres ?? 0;
  const bank = reach.find(({ what, aheadMetres }) => what === 'far-bank' && aheadMetres !== undefined);
  if (bank !== undefined && Math.abs(bank.aheadMetres! - end) < 1 && stretches.at(-1)?.to !== end) {
    stretches.push({ from: end, to: end, words: '' });
  }
  return stretches.map(({ from, to }) => {
    return { from, to, words: to >= end - 0.01 && bank !== undefined ? 'far bank' : 'island' };
  });
}

/** Water of the section that nobody has plumbed, from and to, half a metre or more of it. */
export function unplumbedStretches(profile: readonly ProfilePoint[]): readonly (readonly [number, number])[] {
  const stretches: [number, number][] = [];
  let open = false;
  for (const { distanceMetres, depthMetres, land } of profile) {
    const blind = depthMetres === null && !land;
    if (blind && open) stretches.at(-1)![1] = distanceMetres;
    else if (blind) stretches.push([distanceMetres, distanceMetres]);
    open = blind;
  }
  return stretches.filter(([from, to]) => to - from >= 0.5);
}
