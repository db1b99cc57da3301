import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type RecordBase, recordBase } from '../content/round-file/record-version.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import type { Atlas } from './atlas.ts';
import { venueDirectory } from './load-atlas.ts';

/**
 * Version and fields of every peg record of one water, as the folder holds them now: a bank round takes them along, so
 * that the intake can tell what was changed since.
 * @param folder the venue folder the atlas was read from
 */
export async function loadRecordBases(
  atlas: Atlas,
  water: string,
  folder: string = venueDirectory(),
): Promise<ReadonlyMap<PegKey, RecordBase>> {
  const pegs = atlas.pegsByWater.get(water) ?? [];
  const bases = pegs.map(async ({ peg, file }) => {
    const text = await readFile(join(folder, file), 'utf8');
    return [pegKey(water, peg), recordBase(text)] as const;
  });
  return new Map(await Promise.all(bases));
}
