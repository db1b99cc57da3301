import { type RecordBase, recordBase } from '../content/round-file/record-version.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import type { Atlas } from './atlas.ts';
import { loadRead } from './load-atlas.ts';

/**
 * Version and fields of every peg record of one water, as the folder held them when it was read: a bank round takes them
 * along, so that the intake can tell what was changed since.
 */
export async function loadRecordBases(atlas: Atlas, water: string): Promise<ReadonlyMap<PegKey, RecordBase>> {
  const { texts } = await loadRead();
  const pegs = atlas.pegsByWater.get(water) ?? [];
  return new Map(pegs.map(({ peg, file }) => [pegKey(water, peg), recordBase(texts.get(file)!)]));
}
