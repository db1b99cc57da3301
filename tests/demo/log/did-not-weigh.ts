const STEEPNESS = 6;

/**
 * Chance that an angler does not weigh, given the share of the event's bags below theirs: mostly the low bags, but not
 * always the lowest. Averages to `dnwShare` over an event, for shares up to one seventh.
 */
export function dnwChance(shareBelow: number, dnwShare: number): number {
  return Math.min(1, (STEEPNESS + 1) * dnwShare * (1 - shareBelow) ** STEEPNESS);
}
