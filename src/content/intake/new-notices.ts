import { type PegKey, pegKey } from '../../domain/peg.ts';
import type { RoundFile } from '../round-file/round-file.ts';
import { daySeen } from './merge-peg.ts';
import type { NewNotice } from './notice-file.ts';

/**
 * The notices a round brings: those that were written on the bank, and a closure for each peg or water that was closed with
 * an end, or whole.
 * @param without pegs whose findings are left out
 */
export function newNotices(round: RoundFile, without: ReadonlySet<PegKey>): readonly NewNotice[] {
  const ofPegs = round.pegs
    .filter(
      ({ water, peg, status, until }) => status === 'closed' && until !== undefined && !without.has(pegKey(water, peg)),
    )
    .map((finding): NewNotice => {
      const { water, peg, reason, until } = finding;
      const key = pegKey(water, peg);
      const from = daySeen(finding, 'status', round.day);
      return {
        title: `Peg ${peg} closed: ${reason ?? 'no reason given'}`,
        kind: 'closure',
        from,
        until,
        water,
        pegs: [key],
      };
    });
  const ofWaters = (round.places ?? []).flatMap(({ water, closing, day }): NewNotice[] => {
    if (closing === undefined) return [];
    const { reason, until } = closing;
    return [{ title: `Closed: ${reason}`, kind: 'closure', from: day ?? round.day, until, water, pegs: [] }];
  });
  const written = (round.notices ?? []).map(
    ({ water, pegs, kind, title, text, until, day }): NewNotice => ({
      title,
      kind,
      from: day ?? round.day,
      until,
      water,
      pegs: pegs.map((peg) => pegKey(water, peg)),
      text,
    }),
  );
  return [...ofPegs, ...ofWaters, ...written];
}
