import { beforeEach, describe, expect, it } from 'vitest';
import { changedText, changesPath, readChanges, type TextChange } from '../../../src/client/offline/file-changes.ts';
import { GuideCopy } from '../../../src/client/offline/guide-copy.ts';
import { packChanges } from '../../../src/client/offline/packed-changes.ts';
import { textChange } from '../../../src/commands/guide-folder/text-change.ts';
import { bytesOf, type MadeGuide, madeGuide } from './made-guide.ts';
import { MadeWorld } from './made-world.ts';

const text = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);

let world: MadeWorld;
let copy: GuideCopy;
let first: MadeGuide;
let second: MadeGuide;
let third: MadeGuide;

beforeEach(async () => {
  world = new MadeWorld();
  copy = new GuideCopy(world.surroundings(), '/');
  first = await madeGuide('2026-11-20', ['open', 'open', 'open'], 'one');
  second = await madeGuide('2026-11-21', ['closed', 'closed', 'closed'], 'two');
  third = await madeGuide('2026-11-22', ['closed', 'open', 'closed'], 'three');
  upload(first);
  await takeUp();
});

function upload(guide: MadeGuide): void {
  for (const [path, bytes] of guide.files) world.host.set(path, bytes);
}

function changes(from: MadeGuide, to: MadeGuide, change = textChange): void {
  const files: Record<string, TextChange> = {};
  for (const [path, bytes] of to.files) files[path] = change(text(from.files.get(path)), text(bytes));
  world.host.set(
    changesPath(from.edition),
    bytesOf(JSON.stringify(packChanges({ from: from.edition, to: to.edition, files }))),
  );
}

async function takeUp(): Promise<readonly string[]> {
  world.asked.length = 0;
  await copy.check();
  expect((await copy.takeUp()).outcome).toBe('whole');
  return world.asked;
}

describe('a phone that keeps the edition before', () => {
  it('fetches what changed, and no page again', async () => {
    upload(second);
    changes(first, second);
    expect(await takeUp()).toEqual(['now.json', 'offline-list.json', changesPath(first.edition)]);
    world.isOnline = false;
    expect((await copy.page('pool/1/'))?.html).toContain('Peg 1 is closed.');
  });

  it('goes from edition to edition where it missed one', async () => {
    upload(third);
    changes(first, second);
    changes(second, third);
    const asked = await takeUp();
    expect(asked).toContain(changesPath(second.edition));
    expect(asked).not.toContain('pool/1/');
  });

  it('fetches the files themselves where there are no changes, or they are damaged, wrong or lead nowhere', async () => {
    for (const spoil of [
      () => undefined,
      () => world.host.set(changesPath(first.edition), bytesOf('{"from":')),
      () => changes(first, second, () => [0, [1, 'nonsense']]),
      () => changes(second, third),
      () =>
        world.host.set(
          changesPath(first.edition),
          bytesOf(JSON.stringify(packChanges({ from: first.edition, to: first.edition, files: {} }))),
        ),
      () => world.host.set(changesPath(first.edition), bytesOf('<html>parked</html>')),
    ]) {
      world = new MadeWorld();
      copy = new GuideCopy(world.surroundings(), '/');
      upload(first);
      await takeUp();
      upload(second);
      spoil();
      expect(await takeUp()).toContain('pool/1/');
      expect((await copy.page('pool/1/'))?.html).toContain('Peg 1 is closed.');
    }
  });
});

describe('a phone that saves data', () => {
  it('takes up what pages need first, and of the rest what it holds already', async () => {
    world = new MadeWorld();
    world.savesData = true;
    copy = new GuideCopy(world.surroundings(), '/');
    upload(first);
    const asked = await takeUp();
    expect(asked).toContain('script.js');
    expect(asked.filter((path) => path.startsWith('pool/') || path === 'rules/')).toEqual([]);
    expect((await copy.page('pool/1/'))?.html).toContain('Peg 1 is open.');
    upload(second);
    const again = await takeUp();
    expect(again).toContain('pool/1/');
    expect(again).not.toContain('pool/2/');
  });
});

describe('changes', () => {
  const packed = packChanges({ from: 'a', to: 'b', files: { x: [1, 2, 3, [4, 'y']], 'p/q': [0, -700], z: [] } });

  it('are read as they were written', () => {
    expect(readChanges(bytesOf(JSON.stringify(packed)))).toEqual({
      from: 'a',
      to: 'b',
      files: { x: [1, 2, 3, [4, 'y']], 'p/q': [0, -700], z: [] },
    });
  });

  it('are read whole or not at all', () => {
    for (const other of [
      null,
      [],
      { from: 'a', to: 'b' },
      { from: 'a', to: 'b', files: { x: [1, 2] } },
      { ...packed, files: { x: 9 } },
      { ...packed, files: { x: 1 } },
      { ...packed, files: { x: -1, y: 5 } },
      { ...packed, kept: packed.kept.slice(1) },
      { ...packed, added: 7 },
      { ...packed, put: [] },
      { ...packed, put: [2] },
    ])
      expect(readChanges(bytesOf(JSON.stringify(other))), JSON.stringify(other)).toBeNull();
    expect(readChanges(bytesOf('x'))).toBeNull();
  });

  it('keep what they do not speak of', () => {
    expect(changedText('as it was', [])).toBe('as it was');
    expect(changedText('at 1.09 m, 12 m', [1, 2, 1, [1, 'nine']])).toBe('at 1.11 m, nine m');
    expect(changedText('at 0.05 m', [1, -5])).toBe('at 0.00 m');
  });
});
