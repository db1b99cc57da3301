import { expect, test } from 'vitest';
import { meantRecord } from '../../src/content/meant-record.ts';

test.each([
  ['pegs/kiln-pool/23.md.txt', 'pegs/kiln-pool/23.md'],
  ['pegs/kiln-pool/23.MD', 'pegs/kiln-pool/23.md'],
  ['pegs/kiln-pool/23.txt', 'pegs/kiln-pool/23.md'],
  ['notices/2026-11-02-boards-off.markdown', 'notices/2026-11-02-boards-off.md'],
  ['waters/kiln-pool.json', 'waters/kiln-pool.geojson'],
  ['waters/kiln-pool.geojson.json', 'waters/kiln-pool.geojson'],
  ['waters/kiln-pool.GeoJSON', 'waters/kiln-pool.geojson'],
  ['sessions/2026/sessions.xlsx', 'sessions/2026/sessions.csv'],
  ['sessions/2026/events.CSV', 'sessions/2026/events.csv'],
  ['venue.MD', 'venue.md'],
  ['venue.md.txt', 'venue.md'],
])('%s was meant to be %s', (path, meant) => {
  expect(meantRecord(path)).toBe(meant);
});

test.each(['pegs/kiln-pool/23.md.bak', 'pegs/kiln-pool/23.md~', 'notes.txt', 'papers/list.xlsx', 'waters/Thumbs.db'])(
  '%s is none',
  (path) => {
    expect(meantRecord(path)).toBeNull();
  },
);
