import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readJson } from '../../../src/content/sources/json-source.ts';

const TEXT = JSON.stringify({ a: [1, -2.5e3, true, null, 'x "y" \\ z'], b: { c: 'd' } }, null, 2);

test('knows where each value stands', () => {
  const { source } = readJson('map.geojson', TEXT);
  expect(source?.value).toEqual(JSON.parse(TEXT));
  expect(source?.placeOf(['b', 'c'])).toEqual({ line: 10, column: 10 });
  expect(source?.nameplaceOf(['b', 'c'])).toEqual({ line: 10, column: 5 });
  expect(source?.writtenAt(['a', 1])).toBe('-2500');
});

test('finds the end of a text cut short anywhere', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: TEXT.length - 1 }), (length) => {
      const { faults } = readJson('map.geojson', TEXT.slice(0, length));
      expect(faults).toMatchObject([{ rule: 'json-syntax', found: 'the end of the file' }]);
    }),
  );
});

test('finds the character that is wrong, wherever it is put', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: TEXT.length - 1 }), (at) => {
      const [fault] = readJson('map.geojson', `${TEXT.slice(0, at)}\u0007`).faults;
      expect(fault?.rule).toBe('file-characters');
      const cut = readJson('map.geojson', `${TEXT.slice(0, at)}@${TEXT.slice(at)}`);
      // Inside a string it is one more letter.
      if (cut.source === null) {
        const lines = TEXT.slice(0, at).split('\n');
        const [wrong] = cut.faults;
        expect(wrong?.line).toBe(lines.length);
        expect(Math.abs((wrong?.column ?? 0) - ((lines.at(-1)?.length ?? 0) + 1))).toBeLessThanOrEqual(4);
      }
    }),
  );
});
