import type { OverheadLine } from '../domain/map.ts';
import type { Peg, PermittedReach } from '../domain/peg.ts';
import { linesAtPeg, type StandOffSettings, sweptMetres } from './stand-off.ts';
import type { KeepOpenLimit } from './survey.ts';
import { effectiveReach } from './swept-area.ts';

/** Poles are limited in halves of a metre, casts in metres, sectors in five degrees. */
const POLE_STEP_METRES = 0.5;
const CAST_STEP_METRES = 1;
const SECTOR_STEP_DEGREES = 5;
/** A peg that must be fished with less than this is better closed: about a top kit and two sections. */
const MIN_POLE_METRES = 5;
const MIN_SECTOR_DEGREES = 30;

/**
 * The widest limit that would keep a peg outside the stand-off of every line: the longest pole and cast over the whole
 * sector; where that leaves less than 5 m of pole, the widest narrower sector that leaves as much. Names only what must
 * be limited below what the peg permits now; empty where nothing must; null where no limit helps, because the platform
 * itself is inside or nothing worth fishing is left.
 */
export function keepOpenLimit(
  peg: Peg,
  lines: readonly OverheadLine[],
  settings: StandOffSettings,
): KeepOpenLimit | null {
  const atPeg = linesAtPeg(peg, lines, settings.standOff);
  const permitted = effectiveReach(peg, settings.permittedReach);
  const passes = (reach: PermittedReach) => sweptMetres(atPeg, peg, reach) >= settings.standOff.metres;
  if (passes(permitted)) return {};
  if (!passes({ ...permitted, poleMetres: 0, castMetres: 0 })) return null;
  const least = Math.min(MIN_SECTOR_DEGREES, permitted.sectorDegrees);
  for (let sector = permitted.sectorDegrees; sector >= least; sector = nextNarrower(sector)) {
    const within = { ...permitted, sectorDegrees: sector };
    const poleMetres = longest(permitted.poleMetres, POLE_STEP_METRES, (metres) =>
      passes({ ...within, poleMetres: metres, castMetres: 0 }),
    );
    if (poleMetres < Math.min(MIN_POLE_METRES, permitted.poleMetres)) continue;
    const castMetres = longest(permitted.castMetres, CAST_STEP_METRES, (metres) =>
      passes({ ...within, poleMetres, castMetres: metres }),
    );
    if (poleMetres === 0 && castMetres === 0) continue;
    return {
      ...(poleMetres < permitted.poleMetres ? { poleMetres } : {}),
      ...(castMetres < permitted.castMetres ? { castMetres } : {}),
      ...(sector < permitted.sectorDegrees ? { sectorDegrees: sector } : {}),
    };
  }
  return null;
}

function nextNarrower(sectorDegrees: number): number {
  return Math.ceil(sectorDegrees / SECTOR_STEP_DEGREES - 1) * SECTOR_STEP_DEGREES;
}

/** The longest reach up to `most` that passes: `most` itself or a whole number of steps. A longer reach never passes where a shorter fails. */
function longest(most: number, step: number, passes: (metres: number) => boolean): number {
  if (passes(most)) return most;
  let low = 0;
  let high = Math.ceil(most / step);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (passes(middle * step)) low = middle;
    else high = middle;
  }
  return low * step;
}
