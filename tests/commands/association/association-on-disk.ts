import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { venueOnDisk } from '../intake/venue-on-disk.ts';

/** An association of two venues in a folder of its own, to be broken and removed. */
export class AssociationOnDisk {
  readonly home = mkdtempSync(join(tmpdir(), 'association-'));
  readonly folder = join(this.home, 'waters');

  constructor() {
    for (const id of ['alder', 'birch']) {
      const venue = venueOnDisk();
      cpSync(venue, join(this.folder, id), { recursive: true });
      rmSync(dirname(venue), { recursive: true });
    }
    this.put('alder/venue.md', (text) => text.replace('name: Example Fishery', 'name: Alder Lakes'));
    writeFileSync(
      join(this.folder, 'association.md'),
      '---\nname: Example Vale Association\n---\n\nTwo waters, one card.\n',
    );
  }

  put(path: string, change: (text: string) => string): void {
    const place = join(this.folder, path);
    writeFileSync(place, change(readFileSync(place, 'utf8')));
  }

  breakBirch(): void {
    this.put('birch/venue.md', (text) => text.replace('units: { length: m', 'units: { length: furlong'));
  }

  remove(): void {
    rmSync(this.home, { recursive: true, force: true });
  }
}
