import { sha256Hex } from './even-numbers.ts';
import type { Note } from './match-log.ts';

/** What one phone hands over: to another phone, or to the secretary. */
export interface MatchFile {
  readonly match: string;
  /** The guide it was noted with: the venue's name. */
  readonly venue: string;
  readonly phone: string;
  readonly hasNames: boolean;
  readonly notes: readonly Note[];
}

const MATCH_FILE_FORMAT = 'peg-atlas-match-1';
const MAX_CHARACTERS = 5_000_000;
const MAX_NOTES = 50_000;

/** What may be wrong with a file, in words a person can act on. */
export type MatchFileRead =
  | { readonly ok: true; readonly file: MatchFile; readonly isEdited: boolean }
  | { readonly ok: false; readonly why: string };

/** Whether a text calls itself a match's file; what else it is decides who reads it. */
export function isMatchFile(text: string): boolean {
  return text.slice(0, 200).includes(`"${MATCH_FILE_FORMAT}"`);
}

/** The file's text, with a digest by which a slip of an editor is found out. Names are left out unless they are asked for. */
export async function matchFileText(file: MatchFile): Promise<string> {
  const notes = file.hasNames ? file.notes : file.notes.map(withoutName);
  const body = { match: file.match, venue: file.venue, phone: file.phone, hasNames: file.hasNames, notes };
  return JSON.stringify({ format: MATCH_FILE_FORMAT, check: await sha256Hex(JSON.stringify(body)), ...body });
}

/** The same note without the name it holds. */
function withoutName(note: Note): Note {
  return note.about.startsWith('entry ') && note.value !== null ? { ...note, value: { name: '' } } : note;
}

/** Reads a file that another phone handed over. */
export async function readMatchFile(text: string): Promise<MatchFileRead> {
  if (text.length > MAX_CHARACTERS) return { ok: false, why: 'It is larger than any match: this is some other file.' };
  let read: Record<string, unknown>;
  try {
    read = JSON.parse(text.replace(/^\ufeff/, '')) as Record<string, unknown>;
  } catch {
    return { ok: false, why: 'It was cut off or changed on the way: ask for it to be sent again.' };
  }
  if (typeof read !== 'object' || read === null || read.format !== MATCH_FILE_FORMAT) {
    return { ok: false, why: 'It is no file of a match day.' };
  }
  const { match, venue, phone, hasNames, notes, check } = read;
  const isWhole =
    typeof match === 'string' &&
    typeof venue === 'string' &&
    typeof phone === 'string' &&
    typeof hasNames === 'boolean' &&
    Array.isArray(notes) &&
    notes.length <= MAX_NOTES &&
    notes.every(isNote);
  if (!isWhole)
    return { ok: false, why: 'Something in it was changed so that it cannot be read: ask for it to be sent again.' };
  const file: MatchFile = { match, venue, phone, hasNames, notes };
  return { ok: true, file, isEdited: check !== (await sha256Hex(JSON.stringify(file))) };
}

function isNote(value: unknown): value is Note {
  if (typeof value !== 'object' || value === null) return false;
  const { id, at, about, replaces } = value as Record<string, unknown>;
  const isText = (text: unknown) => typeof text === 'string' && text.length <= 200;
  return (
    isText(id) &&
    /^[0-9a-z]+\.\d+$/.test(id as string) &&
    isText(at) &&
    isText(about) &&
    Array.isArray(replaces) &&
    replaces.every(isText)
  );
}
