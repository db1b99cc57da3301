import { pegKey } from '../../domain/peg.ts';
import { standId } from '../../domain/stand.ts';
import type { Content } from '../content.ts';
import type { StagedFiles } from '../intake/staged-files.ts';
import { idEdits, type StandPlan, stageRecord } from '../stands/stand-change.ts';

/**
 * From format 1 to 2: every peg record states its stand's id. It is the one that was made of water and number until then, so
 * that nothing which knew the stand by it is lost.
 */
export function toFormat2({ pegs }: Content, staged: StagedFiles): StandPlan {
  const without = pegs.filter(({ value }) => value.id === undefined);
  const faults = without.flatMap((stand) => {
    const { file } = stand.source;
    return stageRecord(staged, staged.text(file)!, stand, file, idEdits(stand.value));
  });
  return {
    faults,
    changes: without.map(({ value }) => ({
      where: pegKey(value.water, value.peg),
      words: `id: ${standId(value)}`,
    })),
  };
}
