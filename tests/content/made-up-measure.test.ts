import { expect, test, vi } from 'vitest';
import { parse } from 'yaml';
import { clearancePage } from '../../src/atlas/clearance-page.ts';
import { pegDraftOf } from '../../src/client/round/draft-of.ts';
import { pegFindingOf } from '../../src/client/round/finding-of.ts';
import { firstVenue } from '../../src/content/first-venue.ts';
import { planIntake } from '../../src/content/intake/plan-intake.ts';
import { PEG_FIELD_ORDER } from '../../src/content/peg-field-order.ts';
import { readRound } from '../../src/content/read-round.ts';
import { RoundFileSchema } from '../../src/content/round-file/round-file.ts';
import { fieldTables } from '../../src/content/schemas/field-tables.ts';
import { pegSchema } from '../../src/content/schemas/peg-schema.ts';
import { exampleAtlas } from '../atlas/example-atlas.ts';
import { emptyDraft } from '../client/round/example-draft.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { exampleRound, FOLDER, findingAt, folderOf } from './intake/example-round.ts';

/** A measure that no venue has, added where a contributor would add one. The worked example of DEVELOPERS.md is this one. */
vi.mock('../../src/domain/clearance-measures.ts', async (load) => {
  const real = await load<typeof import('../../src/domain/clearance-measures.ts')>();
  const measure = {
    field: 'kneelingRoomMetres',
    key: 'kneeling-room',
    column: 'kneeling_room',
    name: 'kneeling room',
    short: 'kneeling',
    about: 'room to kneel at the edge',
    maxMetres: 10,
    example: '0.9 m',
    onSheet: 'named',
    isInEveryRound: false,
  };
  (real.CLEARANCE_MEASURES as unknown as object[]).push(measure);
  return real;
});

const METRES = { length: 'm', weight: 'kg' } as const;

test('a measure added to the one list goes from the form to the record, the round and the history', () => {
  const typed = emptyDraft('1', { ...findingAt('1'), fields: { ['kneeling-room' as 'note']: '0,9' } });
  const { finding, problems } = pegFindingOf(typed, 'm');
  expect(problems).toEqual([]);
  const round = RoundFileSchema.parse(exampleRound({ pegs: [finding] }));
  expect(round.pegs[0]).toHaveProperty('kneelingRoomMetres', 0.9);
  expect(pegDraftOf('k7q2xw', round.pegs[0]!, 'm').fields).toHaveProperty('kneeling-room', '0.9');

  const plan = planIntake(folderOf(FOLDER), [{ file: 'round.txt', round, photos: new Map() }], {
    today: '2026-11-20',
    without: new Set(),
    choose: () => undefined,
  });
  const written = new Map(plan.files.map(({ path, bytes }) => [path, new TextDecoder().decode(bytes ?? undefined)]));
  const record = parse(written.get('pegs/pool/1.md')!.split('---\n')[1]!);
  expect(record.clearance).toEqual({ 'clear-width': '4 m', 'kneeling-room': '0.9 m', 'measured-on': '2026-11-12' });

  const [file, csv] = [...written].find(([path]) => path.startsWith('rounds/'))!;
  const { value, faults } = readRound(file, csv, METRES);
  expect(faults).toEqual([]);
  expect(value!.value.entries).toContainEqual(expect.objectContaining({ entry: 'clearance', kneelingRoomMetres: 0.9 }));

  const entries = value!.value.entries.map((entry) => ({ ...entry, water: 'pit' }));
  const atlas = exampleAtlas({ venue: { rounds: [{ ...value!.value, entries }], pegs: [examplePeg('1')] } });
  expect(clearancePage(atlas, 'pit').pegs[0]!.rows[0]!.measured).toEqual(['', '', '', '0.9 m']);
});

test('its limit and its words come with it', () => {
  const tooMuch = emptyDraft('1', { ...findingAt('1'), fields: { ['kneeling-room' as 'note']: '11' } });
  expect(pegFindingOf(tooMuch, 'm').problems.map(({ sentence }) => sentence)).toEqual([
    'The kneeling room “11” is not a length: more than 0 and at most 10 m.',
  ]);
  const record = { water: 'pool', position: { lat: '52', lng: '0' }, facing: 'N', status: 'open' };
  const read = pegSchema(METRES).parse({ ...record, clearance: { 'kneeling-room': '90 cm' } });
  expect(read.clearance).toEqual({ kneelingRoomMetres: 0.9 });
  expect(pegSchema(METRES).safeParse({ ...record, clearance: { 'kneeling-room': '11 m' } }).success).toBe(false);
  expect(fieldTables()).toContain('| `clearance.kneeling-room` |  | number, text | room to kneel at the edge:');
  expect(fieldTables()).toContain('| `kneeling_room` |');
  expect(PEG_FIELD_ORDER(['clearance'])).toEqual([
    'clear-width',
    'lowest-branch',
    'path-width',
    'kneeling-room',
    'measured-on',
  ]);
  expect([...firstVenue('2026-11-01').values()].join('')).toContain('kneeling-room: 0.9 m');
});
