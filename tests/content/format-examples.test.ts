import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { matchReader } from '../../src/content/read-match.ts';
import { pegReader } from '../../src/content/read-peg.ts';
import { readVenueSettings } from '../../src/content/read-venue-settings.ts';
import { venueFiles } from '../../src/content/venue-files.ts';

const FORMAT = readFileSync(new URL('../../src/content/format.md', import.meta.url), 'utf8');
const [venue, peg, match] = [...FORMAT.matchAll(/```yaml\n([\s\S]*?)```/g)].map(([, yaml]) => `---\n${yaml}---\n`);

test('the description of venue.md is one that is accepted', () => {
  const { value, faults } = readVenueSettings(venueFiles(new Map([['venue.md', venue ?? '']])));
  expect(faults).toEqual([]);
  expect(value?.value.thresholds.find(({ id }) => id === 'cold-water')?.checkedOn).toBe('2026-01-10');
});

test('the description of a peg record is one that is accepted', () => {
  const { value, faults } = pegReader({ length: 'm', weight: 'lb' })('pegs/kiln-pool/23.md', peg ?? '');
  expect(faults).toEqual([]);
  expect(value?.value.hazards[0]).toMatchObject({ kind: 'steep-bank', severityAfter: 3, round: 'k7q2' });
});

test('the description of a match is one that is accepted', () => {
  const { value, faults } = matchReader({ length: 'm', weight: 'lb' })(
    'matches/2026-12-06-winter-three.md',
    match ?? '',
  );
  expect(faults).toEqual([]);
  expect(value?.value).toMatchObject({ allIn: '10:00', ends: { gapMetres: 40 }, kept: ['kiln-pool/2'] });
});

test('the description names every column that is read', () => {
  const columns = (kind: string) => {
    const schema = JSON.parse(readFileSync(new URL(`../../public/schema/${kind}-row.json`, import.meta.url), 'utf8'));
    return Object.keys(schema.properties);
  };
  const named = new Set(FORMAT.match(/[a-z_]+/g));
  for (const kind of ['event', 'session', 'sounding', 'gauge', 'round']) {
    for (const column of columns(kind)) expect(named, `${column} of ${kind}`).toContain(column);
  }
});
