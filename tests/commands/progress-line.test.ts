import { expect, test, vi } from 'vitest';
import { progressLine } from '../../src/commands/progress-line.ts';
import { recordedIo } from './recorded-io.ts';

test('elsewhere than on a terminal a step is one plain line, and none where nothing is done', () => {
  const io = recordedIo();
  const { progress } = progressLine('Working out worth from 812 sessions', io);
  expect(io.errors).toEqual([]);
  for (const what of ['total', 'carp', 'back-test']) progress(what);
  expect([io.errors, io.printed]).toEqual([['Working out worth from 812 sessions.'], []]);
});

test('elsewhere what takes long says where it is once in ten seconds', () => {
  const now = vi.spyOn(performance, 'now').mockReturnValue(0);
  try {
    const io = recordedIo();
    const { progress } = progressLine('Working out worth', io);
    for (const [seconds, what] of [
      [0, 'total'],
      [9, 'silvers'],
      [12, 'carp'],
      [15, 'spot'],
      [34, 'back-test'],
    ] as const) {
      now.mockReturnValue(1000 * seconds);
      progress(what);
    }
    expect(io.errors).toEqual([
      'Working out worth.',
      'Working out worth: carp (3 done, 12 s)',
      'Working out worth: back-test (5 done, 34 s)',
    ]);
  } finally {
    now.mockRestore();
  }
});

test('on a terminal it says what it is at and how far, in place of what it said before', () => {
  const shown: string[] = [];
  const io = { ...recordedIo(), showProgress: (line: string) => void shown.push(line) };
  const { progress } = progressLine('Working out worth', io);
  for (const what of ['total', 'carp']) progress(what);
  expect(shown.map((line) => line.replace(/\d+ s/, 'n s'))).toEqual([
    'Working out worth: total (1 done, n s)',
    'Working out worth: carp (2 done, n s)',
  ]);
  expect(io.errors).toEqual([]);
});
