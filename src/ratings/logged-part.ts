import type { BagPart } from '../domain/bag.ts';
import type { Session } from '../domain/session.ts';

/** Rounding of a sheet: parts that come this near to the bag account for all of it. */
const WHOLE_BAG_SHARE = 0.995;

/**
 * The weight of a bag part of a weighed session, in grams. Zero where the sheet leaves it empty but the other parts
 * make up the whole bag; undefined where it is not known.
 */
export function partGrams(session: Session, part: string, bagParts: readonly BagPart[]): number | undefined {
  const logged = session.parts[part]?.weightGrams;
  if (logged !== undefined) return logged;
  const others = bagParts.reduce((sum, { id }) => sum + (session.parts[id]?.weightGrams ?? 0), 0);
  return session.weightGrams !== undefined && others >= WHOLE_BAG_SHARE * session.weightGrams ? 0 : undefined;
}
