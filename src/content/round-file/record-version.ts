import { createHash } from 'node:crypto';
import { frontMatterTexts } from '../edit-front-matter.ts';
import { type Known, ROUND_FIELDS } from './round-file.ts';

/** What a round notes of the record it was made from: its version, and what its fields said. */
export interface RecordBase {
  readonly record: string;
  readonly known: Known;
}

/** A short version of a record's bytes: it changes whenever the file does. */
function recordVersion(bytes: Uint8Array | string): string {
  return createHash('sha256').update(bytes).digest('hex').slice(0, 12);
}

/** Tells venues apart: a round goes to the venue whose guide it was made from. */
export function venueId(name: string, club: string): string {
  return createHash('sha256').update(`${name}\n${club}`).digest('hex').slice(0, 12);
}

/** The base of a peg record, from its text. A record that cannot be read has none of the fields; `check` reports it. */
export function recordBase(text: string): RecordBase {
  return { record: recordVersion(text), known: knownFields(frontMatterTexts(text)) };
}

/** The fields of a record a round may change, as the record writes them. */
export function knownFields(values: unknown): Known {
  const known: Record<string, string> = {};
  for (const field of ROUND_FIELDS) {
    const value = field.split('.').reduce<unknown>((inner, key) => (isRecord(inner) ? inner[key] : undefined), values);
    if (value !== undefined && value !== null && typeof value !== 'object') known[field] = String(value);
  }
  return known;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
