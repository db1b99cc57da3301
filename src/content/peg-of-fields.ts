import { hasDays, holdsOn } from '../domain/dated.ts';
import type { Day } from '../domain/day.ts';
import type { Peg, SeasonalNote } from '../domain/peg.ts';
import type { PegFields } from './schemas/peg-schema.ts';

/**
 * A peg from its record's fields: of what has days, that of the guide's day stands in front and all of it behind. A record
 * without days gives what it always gave.
 * @param name its number, or for a retired stand its id
 */
export function pegOfFields(
  { features, platforms, reach, ...fields }: PegFields,
  name: string,
  notes: readonly SeasonalNote[],
  file: string,
  guideDay: Day,
): Peg {
  const today = <T extends object>(facts: readonly T[]) => facts.filter((fact) => holdsOn(fact, guideDay));
  const platform = today(platforms).map(({ from: _, until: __, ...rest }) => rest)[0];
  return {
    ...fields,
    // Until the map of its water is read; see `facings-from-shore.ts`.
    ...(fields.facingDegrees === undefined
      ? { facingDegrees: 0, isFacingEstimated: true }
      : { facingDegrees: fields.facingDegrees }),
    peg: name,
    features: today(features).map(({ id }) => id),
    ...(platform === undefined ? {} : { platform }),
    reach: today(reach).map(({ from: _, until: __, ...claim }) => claim),
    ...(features.some(hasDays) ? { datedFeatures: features } : {}),
    ...(platforms.some(hasDays) ? { datedPlatforms: platforms } : {}),
    ...(reach.some(hasDays) ? { datedReach: reach } : {}),
    notes,
    file,
  };
}
