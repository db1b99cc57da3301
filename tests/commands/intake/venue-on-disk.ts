import { mkdirSync, mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import sharp from 'sharp';
import { recordBase, venueId } from '../../../src/content/round-file/record-version.ts';
import type { PegFinding, RoundFile } from '../../../src/content/round-file/round-file.ts';
import { type FileChange, smallVenue } from '../../content/small-venue.ts';

/** Writes the small venue into a new folder, and gives its path. */
export function venueOnDisk(changes: Readonly<Record<string, FileChange>> = {}): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'intake-')), 'venue');
  for (const [path, text] of smallVenue(changes).texts) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

/** Every byte of a folder, hidden files too, as text by path. */
export function bytesOf(folder: string, prefix = ''): Record<string, string> {
  const files: Record<string, string> = {};
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) Object.assign(files, bytesOf(path, `${prefix}${name}/`));
    else files[prefix + name] = readFileSync(path, 'latin1');
  }
  return files;
}

/** A finding at a peg of the small venue, made from its record as it is on the disk. */
export function findingAt(folder: string, peg: string, change: Partial<PegFinding> = {}): PegFinding {
  const text = readFileSync(join(folder, `pegs/mill-pond/${peg}.md`), 'utf8');
  return { water: 'mill-pond', peg, hazards: [], ...recordBase(text), ...change };
}

/** A round of the small venue. */
export function roundOf(change: Partial<RoundFile>): RoundFile {
  return {
    format: 'peg-atlas-round',
    version: 1,
    venue: { id: venueId('Example Fishery', 'Example Angling Club'), name: 'Example Fishery' },
    guideDay: '2026-11-21',
    ref: 'w3lkab',
    day: '2026-11-22',
    pegs: [],
    gauges: [],
    photos: [],
    ...change,
  };
}

/** A round with a finding of every kind at three pegs, and a photo. */
export async function fullRound(folder: string): Promise<RoundFile> {
  return roundOf({
    pegs: [
      findingAt(folder, '1', {
        status: 'closed',
        reason: 'The bank has slipped',
        clearWidthMetres: 3.5,
        hazards: [
          { did: 'found', kind: 'barbed-wire', place: 'left of the platform', severity: 3, likelihood: 2, photo: 'p1' },
        ],
        note: '<script>alert(1)</script>',
      }),
      findingAt(folder, '2', {
        hazards: [
          { did: 'cleared', kind: 'slippery', place: 'the steps', foundOn: '2026-03-01', severity: 2, likelihood: 3 },
        ],
      }),
      findingAt(folder, '10', {
        platform: 'worn',
        hazards: [
          { did: 'checked', kind: 'slippery', place: 'the steps', foundOn: '2026-03-01', severity: 2, likelihood: 3 },
        ],
      }),
    ],
    gauges: [{ water: 'mill-pond', levelMetres: 0.12, waterDegreesC: 6.5 }],
    photos: [{ id: 'p1', water: 'mill-pond', peg: '1', shows: 'The wire', jpeg: await jpegWithPlace() }],
  });
}

/** A small picture that carries a place and a device, as a camera writes them. */
async function jpegWithPlace(): Promise<string> {
  const picture = sharp({ create: { width: 64, height: 48, channels: 3, background: '#527' } });
  const exif = { IFD0: { Make: 'Example Phone' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '52/1 45/1 0/1' } };
  return (await picture.withExif(exif).jpeg().toBuffer()).toString('base64');
}

/** Writes a round beside the venue folder, and gives its path. */
export function roundFile(folder: string, content: unknown, name = 'bank-round.txt'): string {
  const path = join(dirname(folder), name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}
