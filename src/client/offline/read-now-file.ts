import { isDay } from '../../domain/day.ts';
import type { NowFile } from '../../domain/now-file.ts';
import { shortDigest } from './digest.ts';
import { parsedJson } from './offline-list.ts';

/** A now file as it is published: the digest of its content beside it, so that half of one is not taken for the whole. */
export interface SignedNow {
  readonly check: string;
  readonly now: NowFile;
}

/** Reads a now file; null for anything that is not wholly one. */
export async function readNowFile(bytes: Uint8Array): Promise<NowFile | null> {
  const signed = parsedJson(bytes) as Partial<SignedNow> | null;
  const now = signed?.now;
  if (now === null || typeof now !== 'object') return null;
  if (typeof now.edition !== 'string' || typeof now.day !== 'string' || !isDay(now.day)) return null;
  if (typeof now.pegs !== 'object' || !Array.isArray(now.notices) || typeof now.marks !== 'object') return null;
  return signed?.check === (await shortDigest(JSON.stringify(now))) ? now : null;
}
