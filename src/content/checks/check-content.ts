import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';

/** A check between records: one idea, told as faults. */
export type Check = (content: Content) => readonly Fault[];

/** Every check, in the order of the folder. */
const CHECKS: readonly Check[] = [];

/** Everything that is wrong between records that can each be read. */
export function checkContent(content: Content): readonly Fault[] {
  return CHECKS.flatMap((check) => check(content));
}
