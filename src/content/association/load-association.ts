import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type * as z from 'zod';
import type { Fault } from '../fault.ts';
import { readBody } from '../read-body.ts';
import { AssociationSchema } from '../schemas/association-schema.ts';
import { readFields } from '../schemas/read-fields.ts';
import { readMarkdownRecord } from '../sources/front-matter.ts';
import { faultOfFile } from '../sources/source.ts';
import { typed } from '../typed-command.ts';

/** The file that makes a folder of venue folders an association. */
const ASSOCIATION_FILE = 'association.md';

/** An association of several venues, each in a folder of its own below it. */
export interface Association extends z.output<typeof AssociationSchema> {
  /** The text of `association.md`, shown above the list of venues. */
  readonly markdown: string;
  /** Names of the venue folders, in the order of the alphabet: the last step of each guide's address. */
  readonly venues: readonly string[];
}

/** An association as read; null where an error leaves nothing to go on. */
export interface AssociationRead {
  readonly association: Association | null;
  readonly faults: readonly Fault[];
}

/** Names that are a step of an address on every host and a folder on every computer. */
const VENUE_NAME = /^[a-z0-9][a-z0-9-]{0,39}$/;

/** Whether a folder is that of an association, and not of one venue. */
export function isAssociation(folder: string): boolean {
  return existsSync(join(folder, ASSOCIATION_FILE)) && !existsSync(join(folder, 'venue.md'));
}

/** Reads `association.md` and which venues there are; the venues themselves are read one by one. */
export function loadAssociation(folder: string): AssociationRead {
  const { record, faults } = readMarkdownRecord(ASSOCIATION_FILE, readFileSync(join(folder, ASSOCIATION_FILE), 'utf8'));
  const { venues, faults: ofFolders } = venueFolders(folder);
  if (record === null) return { association: null, faults: [...faults, ...ofFolders] };
  const read = readFields(AssociationSchema, record.source.value, record.source);
  return {
    association: read.value === null ? null : { ...read.value, markdown: record.body.trim(), venues },
    faults: [...faults, ...read.faults, ...readBody(record).faults, ...ofFolders],
  };
}

function venueFolders(folder: string): { readonly venues: readonly string[]; readonly faults: readonly Fault[] } {
  const folders = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
    .map(({ name }) => name)
    .sort();
  const venues = folders.filter((name) => existsSync(join(folder, name, 'venue.md')));
  const faults: Fault[] = venues
    .filter((name) => !VENUE_NAME.test(name))
    .map((name) =>
      faultOfFile(`${name}/venue.md`, {
        rule: 'association-folder',
        found: `the folder ${name}`,
        expected: 'a folder name of small letters, digits and hyphens, which is the last step of the guide’s address',
        mend: 'Rename the folder.',
      }),
    );
  if (venues.length === 0) {
    faults.push(
      faultOfFile(ASSOCIATION_FILE, {
        rule: 'association-empty',
        found: 'no venue folder beside this file',
        expected: 'a folder for each venue with a venue.md in it',
        mend: `Begin one here with: ${typed('start FOLDER')}`,
      }),
    );
  }
  // A venue whose venue.md was lost must not vanish from the guides in silence.
  for (const name of folders.filter((each) => !venues.includes(each) && existsSync(join(folder, each, 'pegs')))) {
    faults.push(
      faultOfFile(`${name}/venue.md`, {
        rule: 'venue-missing',
        found: 'a folder of pegs without it',
        expected: 'venue.md with the name of the venue, its units and its emergency numbers',
        mend: 'Put it back, or move the folder elsewhere.',
      }),
    );
  }
  return { venues, faults };
}

/** The name under which the association above a venue folder keeps one register of anglers for all; null where it keeps none. */
export function sharedRegisterName(venueFolder: string): string | null {
  const above = dirname(venueFolder);
  if (!isAssociation(above)) return null;
  const { association } = loadAssociation(above);
  return association?.sharesAnglers === true ? association.name : null;
}

/** The venue folders whose logs name anglers by one register: all of an association that shares it, else the folder itself, first. */
export function foldersOfRegister(venueFolder: string): readonly string[] {
  if (sharedRegisterName(venueFolder) === null) return [venueFolder];
  const above = dirname(venueFolder);
  const siblings = (loadAssociation(above).association?.venues ?? []).map((id) => join(above, id));
  return [venueFolder, ...siblings.filter((each) => each !== venueFolder)];
}
