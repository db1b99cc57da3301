import { UNSAFE_PLATFORM } from '../../domain/peg-facts.ts';
import { hazardKind } from '../../domain/risk.ts';
import { CLOSED_FOR_PLATFORM, closedForHazard } from '../../domain/verdict-words.ts';
import type { PegFinding } from '../round-file/round-file.ts';

/** Who of the club said that a peg stays open in spite of what was found at it, and why. */
export interface KeepOpen {
  /** A role, never a name. */
  readonly by: string;
  readonly why: string;
}

/** What of a finding may close its peg. */
interface ClosingFinding {
  readonly platform?: string | undefined;
  readonly hazards: PegFinding['hazards'];
}

/**
 * Why a finding closes its peg, in words for the record: a platform that must not be used, or a hazard whose kind is a hard
 * rule, new or worse. Null where nothing of it does.
 */
export function closingWords({ platform, hazards }: ClosingFinding): string | null {
  const rules = hazards
    .filter(({ did, kind }) => (did === 'found' || did === 'worsened') && hazardKind(kind).hardRule)
    .map(({ kind, place }) => closedForHazard({ name: hazardKind(kind).name, place }));
  const isUnsafe = platform?.trim().toLowerCase().startsWith(UNSAFE_PLATFORM) ?? false;
  const words = [...(isUnsafe ? [CLOSED_FOR_PLATFORM] : []), ...rules];
  return words.length === 0 ? null : `${words.join('. ')}.`;
}
