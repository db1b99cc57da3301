import { DefaultPacketFactory, parseGenericPacket } from 'nmea-simple';
import { type Day, isDay } from '../../../domain/day.ts';
import type { LatLng } from '../../../domain/place.ts';
import type { Unread } from '../results/result-row.ts';
import type { DepthLog, LoggedDepth } from './depth-log.ts';

/** Depth sentences the library leaves to its users: DPT (depth and the transducer's offset) and DBS (below the surface). */
interface DepthSentence {
  readonly sentenceId: 'DPT' | 'DBS';
  readonly depthMetres: number;
  /** To the waterline where positive (NMEA 0183, DPT field 2); NaN where it is not set. */
  readonly offsetMetres: number;
}

class DepthSentences extends DefaultPacketFactory<DepthSentence> {
  override assembleCustomPacket(stub: { readonly sentenceId?: string }, fields: string[]): DepthSentence | null {
    const number = (index: number): number => (fields[index] ? Number(fields[index]) : Number.NaN);
    if (stub.sentenceId === 'DPT') return { sentenceId: 'DPT', depthMetres: number(1), offsetMetres: number(2) };
    if (stub.sentenceId === 'DBS') return { sentenceId: 'DBS', depthMetres: number(3), offsetMetres: 0 };
    return null;
  }
}

/** A depth belongs to a fix of at most this many seconds before or after it. */
const PAIR_SECONDS = 2;

interface Fix {
  readonly at: LatLng;
  readonly seconds: number;
  readonly day: Day | null;
}

/** Whether a text begins like NMEA 0183. */
export function isNmea(text: string): boolean {
  return /^\s*[$!][A-Z]{2,5}/.test(text);
}

/**
 * Reads a log of NMEA 0183 sentences: fixes from RMC and GGA that say they are valid, depths from DPT, DBS and DBT. A
 * sentence whose checksum is wrong or missing is left out and counted. A depth carries no time of its own: it belongs to
 * the fix before it, while no fix more than two seconds away follows.
 */
export function readNmea(file: string, text: string): DepthLog {
  const factory = new DepthSentences();
  const depths: LoggedDepth[] = [];
  let [badSums, unfixed, belowTransducer, offsets] = [0, 0, 0, 0];
  let fix: Fix | null = null;
  let day: Day | null = null;
  const waiting: { depthMetres: number }[] = [];
  const place = (to: Fix | null): void => {
    for (const { depthMetres } of waiting.splice(0)) {
      if (fix === null || (to !== null && secondsBetween(fix.seconds, to.seconds) > 2 * PAIR_SECONDS)) unfixed += 1;
      else depths.push({ at: fix.at, depth: depthMetres, unit: 'm', day: fix.day });
    }
  };
  for (const line of text.split(/\r\n|\n|\r/)) {
    const sentence = line.trim();
    if (sentence === '') continue;
    const packet = readSentence(sentence, factory);
    if (packet === 'bad') {
      badSums += 1;
      continue;
    }
    if (packet === null) continue;
    if (packet.sentenceId === 'RMC' || packet.sentenceId === 'GGA') {
      if (packet.sentenceId === 'RMC' ? packet.status !== 'valid' : packet.fixType === 'none') {
        place(null);
        fix = null;
        continue;
      }
      if (packet.sentenceId === 'RMC') day = dayOf(packet.datetime) ?? day;
      const time = packet.sentenceId === 'RMC' ? packet.datetime : packet.time;
      const next: Fix = {
        at: { lat: packet.latitude, lng: packet.longitude },
        seconds: time.getUTCHours() * 3600 + time.getUTCMinutes() * 60 + time.getUTCSeconds(),
        day,
      };
      place(next);
      fix = next;
      continue;
    }
    const depth = depthOf(packet);
    if (depth === null) continue;
    if (depth.isBelowTransducer) belowTransducer += 1;
    else offsets += 1;
    waiting.push({ depthMetres: depth.metres });
  }
  place(null);
  const unread: Unread[] = [
    ...(badSums > 0 ? [{ place: file, what: `${badSums} sentences`, why: 'their checksum is wrong or missing' }] : []),
    ...(unfixed > 0 ? [{ place: file, what: `${unfixed} depths`, why: 'no valid fix within two seconds' }] : []),
  ];
  return { file, depths, isBelowTransducer: belowTransducer > 0 && offsets === 0, unread };
}

function readSentence(sentence: string, factory: DepthSentences) {
  try {
    // The library takes a sentence without a checksum: here it counts as broken.
    return /\*[0-9A-F]{2}$/i.test(sentence) ? parseGenericPacket(sentence, factory) : 'bad';
  } catch (error) {
    // A sentence of another kind is none of ours; anything else is broken.
    return /no known parser/i.test(String(error)) ? null : 'bad';
  }
}

function depthOf(
  packet: NonNullable<Exclude<ReturnType<typeof readSentence>, 'bad'>>,
): { readonly metres: number; readonly isBelowTransducer: boolean } | null {
  if (packet.sentenceId === 'DBS' || packet.sentenceId === 'DPT') {
    const { depthMetres, offsetMetres } = packet as DepthSentence;
    if (!(depthMetres > 0)) return null;
    // A negative offset is measured to the keel: the depth below the transducer is what is known.
    const isSurface = packet.sentenceId === 'DBS' || offsetMetres > 0;
    const toSurface = Math.max(Number.isNaN(offsetMetres) ? 0 : offsetMetres, 0);
    return { metres: depthMetres + toSurface, isBelowTransducer: !isSurface };
  }
  if (packet.sentenceId === 'DBT' && 'depthMeters' in packet && packet.depthMeters > 0) {
    return { metres: packet.depthMeters, isBelowTransducer: true };
  }
  return null;
}

function secondsBetween(a: number, b: number): number {
  const apart = Math.abs(a - b);
  return Math.min(apart, 86_400 - apart);
}

function dayOf(time: Date): Day | null {
  if (Number.isNaN(time.getTime())) return null;
  const day = time.toISOString().slice(0, 10);
  return isDay(day) ? day : null;
}
