import { expect, test, vi } from 'vitest';
import { readingProgress } from '../../src/commands/reading-progress.ts';
import { recordedIo } from './recorded-io.ts';

test('a terminal shows nothing for a second, then what was read last, ten times a second at most', () => {
  const now = vi.spyOn(performance, 'now').mockReturnValue(0);
  try {
    const shown: string[] = [];
    const io = { ...recordedIo(), showProgress: (line: string) => void shown.push(line) };
    const progress = readingProgress('content', io);
    for (let part = 1; part <= 25; part++) {
      now.mockReturnValue(part * 50);
      progress(`pegs/pool/${part}.md`);
    }
    expect(shown).toEqual([
      'Reading and checking content: pegs/pool/20.md (20 done, 1 s)',
      'Reading and checking content: pegs/pool/22.md (22 done, 1 s)',
      'Reading and checking content: pegs/pool/24.md (24 done, 1 s)',
    ]);
    expect(io.errors).toEqual([]);
  } finally {
    now.mockRestore();
  }
});

test('elsewhere a small folder is read in silence and a large one is told of once', () => {
  const io = recordedIo();
  const progress = readingProgress('content', io);
  for (let part = 1; part < 500; part++) progress('a file');
  expect(io.errors).toEqual([]);
  for (let part = 500; part < 1500; part++) progress('a file');
  expect(io.errors).toEqual(['Reading and checking content.']);
});
