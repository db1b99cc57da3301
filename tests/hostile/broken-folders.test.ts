import { performance } from 'node:perf_hooks';
import { afterAll, describe, expect, it } from 'vitest';
import { formatFault } from '../../src/content/format-fault.ts';
import { readVenue } from '../../src/content/read-venue.ts';
import { smallVenue } from '../content/small-venue.ts';
import { BROKEN_FOLDERS } from './broken-folders.ts';

const measured: string[] = [];

describe('a broken folder is told with its place and its mend, and nothing of it is published', () => {
  it('has at least 150 of them', () => {
    expect(BROKEN_FOLDERS.length).toBeGreaterThanOrEqual(150);
    expect(new Set(BROKEN_FOLDERS.map(({ name }) => name)).size).toBe(BROKEN_FOLDERS.length);
  });

  it.each(BROKEN_FOLDERS)(
    '$name',
    ({ name, changes, fault: expected, severity = 'error' }) => {
      const files = smallVenue(changes);
      const before = new Map(files.texts);
      const memory = process.memoryUsage().heapUsed;
      const began = performance.now();
      const { venue, faults } = readVenue(files);
      const milliseconds = performance.now() - began;
      const megabytes = Math.max(0, process.memoryUsage().heapUsed - memory) / 2 ** 20;
      const found = faults.filter(
        ({ rule, file, line, severity: bad }) =>
          (expected.rule === '' || rule === expected.rule) &&
          file === expected.file &&
          (expected.line === 0 || line === expected.line) &&
          bad === severity,
      );
      const told = faults.map(formatFault);
      expect(found.length, `told instead:\n${told.join('\n')}`).toBeGreaterThan(0);
      expect(found[0]?.mend).toMatch(expected.mend ?? /\S/);
      // One slip is not told as twenty.
      expect(faults.length).toBeLessThanOrEqual(15);
      expect(venue === null).toBe(severity === 'error');
      for (const line of told) expect(line).toMatch(/^[^\p{Cc}\u2028-\u202e\u2066-\u2069]+$/u);
      // Nothing is mended behind anybody's back.
      expect(new Map(files.texts)).toEqual(before);
      const { rule, file, line } = found[0]!;
      measured.push(`${name} | ${rule} | ${file}:${line} | ${milliseconds.toFixed(0)} ms | ${megabytes.toFixed(1)} MB`);
    },
    10_000,
  );
});

afterAll(() => {
  console.info(['folder | rule | place | time | memory', ...measured].join('\n'));
});
