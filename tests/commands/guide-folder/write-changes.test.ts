import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { changedText, changesPath, readChanges } from '../../../src/client/offline/file-changes.ts';
import { readOfflineList } from '../../../src/client/offline/offline-list.ts';
import { writeChanges } from '../../../src/commands/guide-folder/write-changes.ts';
import { writeOfflineList } from '../../../src/commands/offline-list.ts';

let scratch: string;

beforeEach(() => {
  scratch = mkdtempSync(join(tmpdir(), 'changes-'));
});

afterEach(() => rmSync(scratch, { recursive: true, force: true }));

/** Builds a guide of one page beside those before it, and gives its edition. */
async function guide(name: string, before: string | null, day: string, words: string): Promise<string> {
  const folder = join(scratch, name);
  const write = (path: string, text: string) => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  };
  write('now.json', JSON.stringify({ day, pegs: {}, notices: [] }));
  write('pool/14 a/index.html', `<body data-guide-day="${day}">Data to ${day}. ${words}</body>`);
  write('same.txt.html', 'the same');
  write('picture.png', words);
  await writeOfflineList(folder, '/');
  if (before !== null) await writeChanges(folder, join(scratch, before));
  const list = await readOfflineList(readFileSync(join(folder, 'offline-list.json')));
  return list!.edition;
}

const changesOf = (name: string, edition: string) =>
  readChanges(readFileSync(join(scratch, name, changesPath(edition))))!;
const steps = (name: string) => readdirSync(join(scratch, name, 'changes')).length;

it('writes how each text of the guide before becomes that of the new one', async () => {
  const one = await guide('one', null, '2026-11-21', 'Open.');
  const two = await guide('two', 'one', '2026-11-22', 'Closed, the boards are off.');
  const { from, to, files } = changesOf('two', one);
  expect([from, to]).toEqual([one, two]);
  expect(Object.keys(files)).toEqual(['pool/14%20a/']);
  const page = (name: string) => readFileSync(join(scratch, name, 'pool/14 a/index.html'), 'utf8');
  expect(changedText(page('one'), files['pool/14%20a/']!)).toBe(page('two'));
  expect(existsSync(join(scratch, 'one/changes'))).toBe(false);
});

it('carries on what changed before that, for a few editions, and no longer', async () => {
  const editions: string[] = [];
  for (let i = 0; i < 7; i++)
    editions.push(await guide(`g${i}`, i === 0 ? null : `g${i - 1}`, `2026-11-2${i}`, `No ${i}.`));
  expect(steps('g6')).toBe(4);
  for (const i of [2, 3, 4, 5]) expect(changesOf('g6', editions[i]!).to).toBe(editions[i + 1]);
});

it('keeps what it had where the new guide is the old one again, and is no part of the edition', async () => {
  const one = await guide('one', null, '2026-11-21', 'Open.');
  const two = await guide('two', 'one', '2026-11-22', 'Closed.');
  expect(await guide('again', 'two', '2026-11-22', 'Closed.')).toBe(two);
  expect(readdirSync(join(scratch, 'again/changes'))).toEqual([`${one}.json`]);
  cpSync(join(scratch, 'two'), join(scratch, 'listed'), { recursive: true });
  await writeOfflineList(join(scratch, 'listed'), '/');
  expect((await readOfflineList(readFileSync(join(scratch, 'listed/offline-list.json'))))!.edition).toBe(two);
});

it('goes round in no circle where a guide comes back', async () => {
  const one = await guide('one', null, '2026-11-21', 'Open.');
  await guide('two', 'one', '2026-11-22', 'Closed.');
  expect(await guide('three', 'two', '2026-11-21', 'Open.')).toBe(one);
  expect(steps('three')).toBeLessThanOrEqual(2);
});

it('writes nothing beside a folder that held no guide', async () => {
  mkdirSync(join(scratch, 'empty'));
  await guide('one', 'empty', '2026-11-21', 'Open.');
  expect(existsSync(join(scratch, 'one/changes'))).toBe(false);
});
