import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type GuideDisk, REAL_GUIDE_DISK } from '../../../src/commands/guide-folder/guide-disk.ts';
import { recoverGuide, replaceGuide, unfinishedGuide } from '../../../src/commands/guide-folder/replace-guide.ts';

let parent: string;
let out: string;

beforeEach(() => {
  parent = mkdtempSync(join(tmpdir(), 'guide-'));
  out = join(parent, 'dist');
});

afterEach(() => rmSync(parent, { recursive: true, force: true }));

function guide(folder: string, edition: string): void {
  mkdirSync(join(folder, 'page'), { recursive: true });
  writeFileSync(join(folder, 'index.html'), edition);
  writeFileSync(join(folder, 'page/index.html'), edition);
}

/** The edition served: every page of it must be of one. */
function served(): string | null {
  if (!existsSync(out)) return null;
  const pages = ['index.html', 'page/index.html'].map((page) => readFileSync(join(out, page), 'utf8'));
  expect(pages[0]).toBe(pages[1]);
  return pages[0] ?? null;
}

class Killed extends Error {}

/** A disk whose process is killed before its call number `stopAt`; what each call was is written down. */
function stoppingDisk(stopAt: number, calls: string[] = []): GuideDisk {
  const step = (call: string) => {
    calls.push(call);
    if (calls.length >= stopAt) throw new Killed();
  };
  const short = (path: string) => path.replace(`${parent}/`, '').replace(/\d+$/, 'N');
  return {
    exists: (path) => {
      step(`exists ${short(path)}`);
      return REAL_GUIDE_DISK.exists(path);
    },
    list: (path) => {
      step(`list ${short(path)}`);
      return REAL_GUIDE_DISK.list(path);
    },
    rename: (from, to) => {
      step(`rename ${short(from)} ${short(to)}`);
      REAL_GUIDE_DISK.rename(from, to);
    },
    remove: (path) => {
      step(`remove ${short(path)}`);
      return REAL_GUIDE_DISK.remove(path);
    },
  };
}

const nobody = () => false;

describe('a new guide in the place of an old one', () => {
  it('is there whole, and nothing else is left', () => {
    guide(out, 'old');
    guide(unfinishedGuide(out), 'new');
    const calls: string[] = [];
    replaceGuide(out, stoppingDisk(Number.POSITIVE_INFINITY, calls));
    expect(served()).toBe('new');
    expect(readdirSync(parent)).toEqual(['dist']);
    expect(calls).toEqual([
      'rename .dist-unfinished-N .dist-whole-N',
      'exists dist',
      'rename dist .dist-old-N',
      'rename .dist-whole-N dist',
      'remove .dist-old-N',
    ]);
  });

  it('is wholly old or wholly new after the next command, whichever call it was killed before, and nothing is left', () => {
    const outcomes: (string | null)[] = [];
    for (let stopAt = 1; stopAt <= 5; stopAt++) {
      rmSync(parent, { recursive: true });
      guide(out, 'old');
      guide(unfinishedGuide(out), 'new');
      expect(() => replaceGuide(out, stoppingDisk(stopAt))).toThrow(Killed);
      recoverGuide(out, REAL_GUIDE_DISK, nobody);
      outcomes.push(served());
      expect(readdirSync(parent), `killed before call ${stopAt}`).toEqual(['dist']);
    }
    expect(outcomes).toEqual(['old', 'old', 'old', 'new', 'new']);
  });

  it('is so too where the one that recovers it is killed, at each of its calls', () => {
    for (let stopAt = 1; stopAt <= 5; stopAt++) {
      for (let again = 1; again <= 6; again++) {
        rmSync(parent, { recursive: true });
        guide(out, 'old');
        guide(unfinishedGuide(out), 'new');
        expect(() => replaceGuide(out, stoppingDisk(stopAt))).toThrow(Killed);
        try {
          recoverGuide(out, stoppingDisk(again), nobody);
        } catch (error) {
          expect(error).toBeInstanceOf(Killed);
        }
        recoverGuide(out, REAL_GUIDE_DISK, nobody);
        expect(['old', 'new']).toContain(served());
        expect(readdirSync(parent)).toEqual(['dist']);
      }
    }
  });

  it('leaves the old guide where the disk refuses the second move', () => {
    guide(out, 'old');
    guide(unfinishedGuide(out), 'new');
    const refusing: GuideDisk = {
      ...REAL_GUIDE_DISK,
      rename: (from, to) => {
        if (from.includes('whole')) throw Object.assign(new Error('no'), { code: 'EACCES' });
        REAL_GUIDE_DISK.rename(from, to);
      },
    };
    expect(() => replaceGuide(out, refusing)).toThrow('no');
    expect(served()).toBe('old');
  });

  it('gives way to none where two builds end at once: the later stands whole', () => {
    guide(out, 'old');
    guide(unfinishedGuide(out), 'new');
    let came = false;
    const racing: GuideDisk = {
      ...REAL_GUIDE_DISK,
      rename: (from, to) => {
        REAL_GUIDE_DISK.rename(from, to);
        // The other build puts its guide in place just as this one has moved the old one away.
        if (to.includes('-old-') && !came) {
          came = true;
          guide(out, 'other');
        }
      },
    };
    replaceGuide(out, racing);
    expect(served()).toBe('new');
    expect(readdirSync(parent)).toEqual(['dist']);
  });

  it('leaves alone what a build at work has beside it, and folders of other names', () => {
    guide(out, 'old');
    guide(unfinishedGuide(out), 'half');
    guide(join(parent, '.other-unfinished-999999'), 'other');
    expect(recoverGuide(out)).toBe(false);
    expect(readdirSync(parent).sort()).toEqual([`.dist-unfinished-${process.pid}`, '.other-unfinished-999999', 'dist']);
  });
});
