import { chmod, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { loadVenue } from '../../src/content/load-venue.ts';
import { FOLDER_LIMITS, readFolder } from '../../src/content/read-folder.ts';
import { smallVenue } from './small-venue.ts';

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'venue-'));
});

afterEach(() => rm(folder, { recursive: true, force: true }));

async function write(path: string, content: string | Uint8Array): Promise<void> {
  await mkdir(dirname(join(folder, path)), { recursive: true });
  await writeFile(join(folder, path), content);
}

async function writeSmallVenue(): Promise<void> {
  for (const [path, text] of smallVenue().texts) await write(path, text);
}

test('reads a folder from the disk as it reads one in memory', async () => {
  await writeSmallVenue();
  const { texts, faults, leftOut } = await readFolder(folder);
  expect(new Map([...texts].sort())).toEqual(new Map([...smallVenue().texts].sort()));
  expect([faults, leftOut]).toEqual([[], []]);
  expect((await loadVenue(folder)).venue?.pegs).toHaveLength(3);
});

test.each([
  ['missing', async () => rm(folder, { recursive: true }), 'folder-missing'],
  ['empty', async () => write('.gitkeep', ''), 'folder-empty'],
  ['one of several venues', async () => write('alder/venue.md', '---\n---\n'), 'folder-of-venues'],
  [
    'a file',
    async () => {
      await rm(folder, { recursive: true });
      await writeFile(folder, 'x');
    },
    'folder-missing',
  ],
])('tells once of a folder that is %s', async (_, prepare, rule) => {
  await prepare();
  const { venue, faults } = await loadVenue(folder);
  expect(venue).toBeNull();
  expect(faults.map((fault) => fault.rule)).toEqual([rule]);
});

test('follows no link, and says which it left out', async () => {
  await writeSmallVenue();
  await symlink('/etc/hostname', join(folder, 'pegs/mill-pond/3.md'));
  await symlink('/etc', join(folder, 'notices/elsewhere'));
  const { texts, leftOut } = await readFolder(folder);
  expect([...texts.keys()].some((path) => path.includes('3.md') || path.includes('elsewhere'))).toBe(false);
  expect(leftOut.map(({ file, what }) => [file, what])).toEqual([
    ['notices/elsewhere', 'a link'],
    ['pegs/mill-pond/3.md', 'a link'],
  ]);
});

test('refuses a file beyond the limit by its size, without reading it', async () => {
  await writeSmallVenue();
  await write('pegs/mill-pond/1.md', 'x'.repeat(5000));
  const { texts, unread, faults } = await readFolder(folder, { ...FOLDER_LIMITS, fileBytes: 4000 });
  expect(texts.has('pegs/mill-pond/1.md')).toBe(false);
  expect([...unread]).toEqual(['pegs/mill-pond/1.md']);
  expect(faults).toMatchObject([{ file: 'pegs/mill-pond/1.md', rule: 'file-size', found: '0.0 MB' }]);
});

test('stops at too many files', async () => {
  await writeSmallVenue();
  const { faults } = await readFolder(folder, { ...FOLDER_LIMITS, files: 4 });
  expect(faults).toMatchObject([{ rule: 'folder-files', found: 'more than 4 files' }]);
});

test('says where bytes are no UTF-8, and how to save a spreadsheet', async () => {
  await writeSmallVenue();
  await write(
    'gauge/mill-pond.csv',
    Buffer.concat([Buffer.from('date,level,water_temperature\n2026-01-'), Buffer.from([0xe9]), Buffer.from(',1,\n')]),
  );
  await write('sessions/2026/events.csv', Buffer.from('\uFEFFevent,date\n', 'utf16le'));
  const { faults } = await readFolder(folder);
  expect(faults.map(({ file, line, column, found }) => [file, line, column, found])).toEqual([
    ['gauge/mill-pond.csv', 2, 9, 'bytes that are no UTF-8 text'],
    ['sessions/2026/events.csv', 1, 1, 'UTF-16 text'],
  ]);
  expect(faults.map(({ rule }) => rule)).toEqual(['file-encoding', 'file-encoding']);
});

test('refuses a name with what is not seen, and a file that looks like a record and is none', async () => {
  await writeSmallVenue();
  await write('notices/a\u200Bb.md', 'x');
  await write('pegs/mill-pond/3.MD', 'x');
  const { texts, faults } = await readFolder(folder);
  expect(texts.size).toBe(smallVenue().texts.size);
  expect(faults).toMatchObject([
    { rule: 'file-name', found: 'a name with a character that is not seen' },
    { file: 'pegs/mill-pond/3.MD', rule: 'file-ending', mend: expect.stringContaining('pegs/mill-pond/3.md') },
  ]);
});

test('lists pictures with their size, and leaves out what is neither picture nor record', async () => {
  await writeSmallVenue();
  const picture = await sharp({ create: { width: 9, height: 9, channels: 3, background: '#385' } })
    .jpeg()
    .toBuffer();
  await write('photos/mill-pond/1.jpg', picture);
  await write('photos/notes.doc', 'x');
  await write('old.xlsx', 'x');
  const { photos, leftOut } = await readFolder(folder);
  expect([...photos]).toEqual([['mill-pond/1.jpg', picture.length]]);
  expect(leftOut.map(({ file }) => file)).toEqual(['old.xlsx', 'photos/notes.doc']);
});

test('lists pictures in the order of their names, however long each takes to decode', async () => {
  const plain = (side: number) =>
    sharp({ create: { width: side, height: side, channels: 3, background: '#385' } })
      .png()
      .toBuffer();
  const [large, small] = await Promise.all([plain(3000), plain(3)]);
  for (const [i, name] of ['1', '2', '10', '11', '12'].entries()) {
    await write(`photos/${name}.png`, i % 2 === 0 ? large : small);
  }
  const { photos } = await readFolder(folder);
  expect([...photos.keys()]).toEqual(['1.png', '2.png', '10.png', '11.png', '12.png']);
});

test('reads a folder in which a file stands where a folder is looked for', async () => {
  await writeSmallVenue();
  await rm(join(folder, 'rounds'), { recursive: true });
  await write('rounds', 'x');
  const { faults, leftOut } = await loadVenue(folder);
  expect(faults).toEqual([]);
  expect(leftOut).toMatchObject([{ file: 'rounds', what: 'a file of another kind' }]);
});

// Root may read everything.
test.skipIf(process.getuid?.() === 0)('tells of a file the system does not let be read', async () => {
  await writeSmallVenue();
  await chmod(join(folder, 'venue.md'), 0);
  expect((await loadVenue(folder)).faults).toMatchObject([{ file: 'venue.md', rule: 'file-unreadable' }]);
});

test('refuses a picture that is none, is empty, is cut short or unpacks beyond measure', async () => {
  await writeSmallVenue();
  const plain = sharp({ create: { width: 400, height: 400, channels: 3, background: '#385' } });
  const whole = await plain.clone().jpeg().toBuffer();
  // One bit a pixel and all of one colour: some kilobytes that unpack to more than 100 million pixels.
  const bomb = await sharp({ create: { width: 11_000, height: 10_000, channels: 3, background: '#000' } })
    .png({ palette: true, colours: 2 })
    .toBuffer();
  await write('photos/bomb.png', bomb);
  await write('photos/empty.jpg', '');
  await write('photos/page.jpg', '<html>not found</html>');
  await write('photos/short.jpg', whole.subarray(0, whole.length - 600));
  await write('photos/whole.jpg', whole);
  const { photos, unread, faults } = await readFolder(folder);
  expect([...photos.keys()]).toEqual(['whole.jpg']);
  expect(faults.map(({ file, rule }) => [file, rule])).toEqual([
    ['photos/bomb.png', 'picture-size'],
    ['photos/empty.jpg', 'picture-empty'],
    ['photos/page.jpg', 'picture-unreadable'],
    ['photos/short.jpg', 'picture-damaged'],
  ]);
  expect(unread.size).toBe(4);
});
