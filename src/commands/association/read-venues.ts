import { join } from 'node:path';
import { type Association, loadAssociation } from '../../content/association/load-association.ts';
import type { Fault, LeftOut } from '../../content/fault.ts';
import { loadVenue } from '../../content/load-venue.ts';
import type { VenueRead } from '../../content/read-venue.ts';
import type { CommandIo } from '../command-io.ts';
import { printFaults } from '../print-faults.ts';
import { readingProgress } from '../reading-progress.ts';

/** One venue of an association, read. */
export interface MemberRead {
  readonly id: string;
  readonly folder: string;
  readonly read: VenueRead;
}

/** An association and all its venues, read and told of. */
export interface MembersRead {
  readonly association: Association | null;
  readonly faults: readonly Fault[];
  readonly members: readonly MemberRead[];
}

/** Reads an association and every venue of it, and prints the faults of each unless a program will be told of them. */
export async function readMembers(
  folder: string,
  isJson: boolean,
  io: CommandIo,
  isSilent = isJson,
): Promise<MembersRead> {
  const { association, faults } = loadAssociation(folder);
  if (!isJson) printFaults(folder, faults, [], io);
  const members: MemberRead[] = [];
  for (const id of association?.venues ?? []) {
    const own = join(folder, id);
    const read = await loadVenue(own, io.today?.(), isSilent ? undefined : readingProgress(own, io));
    if (!isJson) printFaults(own, read.faults, read.leftOut, io);
    members.push({ id, folder: own, read });
  }
  return { association, faults, members };
}

/** Whether nothing in what was read stops a guide. */
export function isSound({ association, faults, members }: MembersRead): boolean {
  return (
    association !== null &&
    faults.every(({ severity }) => severity !== 'error') &&
    members.every(({ read }) => read.venue !== null)
  );
}

/** What a program is told of each venue. */
export function memberJson({ id, read }: MemberRead): {
  readonly venue: string;
  readonly ok: boolean;
  readonly faults: readonly Fault[];
  readonly leftOut: readonly LeftOut[];
} {
  return { venue: id, ok: read.venue !== null, faults: read.faults, leftOut: read.leftOut };
}
