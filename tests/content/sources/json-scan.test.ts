import fc from 'fast-check';
import { expect, test } from 'vitest';
import { MAX_LEVELS, scanJson } from '../../../src/content/sources/json-scan.ts';
import { readJson } from '../../../src/content/sources/json-source.ts';

/** Every JSON value, its text with blanks or without. */
const soundText = fc
  .tuple(fc.json(), fc.constantFrom(0, 1, '\t'))
  .map(([text, indent]) => JSON.stringify(JSON.parse(text), null, indent));

test('calls sound what the engine’s own reader calls sound (RFC 8259)', () => {
  fc.assert(
    fc.property(soundText, (text) => {
      expect(scanJson(text)).toEqual({ brokenAt: null, tooDeepAt: null, doubled: [] });
    }),
  );
});

test('calls broken what the engine’s own reader calls broken, and no sound text', () => {
  const piece = fc.constantFrom('', '"', '\\', ',', '[', '}', ':', '-', '.', 'e', 'tru', '\\u12', '0', '\n', '\u0001');
  fc.assert(
    fc.property(soundText, fc.nat(400), fc.nat(3), piece, (whole, at, cut, put) => {
      const from = at % (whole.length + 1);
      const text = whole.slice(0, from) + put + whole.slice(from + cut);
      expect(scanJson(text).brokenAt === null).toBe(isSound(text));
    }),
    { numRuns: 2000 },
  );
});

test('looks at nothing behind the place it calls broken: what stands before it may still become JSON', () => {
  fc.assert(
    fc.property(soundText, fc.nat(400), (whole, at) => {
      const from = at % (whole.length + 1);
      const { brokenAt } = scanJson(`${whole.slice(0, from)}\u0001${whole.slice(from)}`);
      if (brokenAt !== null && whole.slice(0, from).trim() !== '') expect(brokenAt).toBeLessThanOrEqual(from);
    }),
  );
});

test('tells every member that stands twice, in whichever object, also under an escape', () => {
  const { doubled } = scanJson('{"a":1,"b":{"c":1,"c":2},"\\u0061":3,"d":[{"a":1},{"a":2}]}');
  expect(doubled).toEqual([
    { offset: 18, name: 'c' },
    { offset: 25, name: 'a' },
  ]);
});

test('an overhead line that is drawn twice under one name of a member is a fault, not a line less', () => {
  const text = '{"type":"FeatureCollection",\n"features":[{"kind":"line"}],\n"features":[]}';
  expect(readJson('map.geojson', text).faults).toMatchObject([
    { rule: 'json-duplicate', line: 3, column: 1, found: 'the member "features" a second time' },
  ]);
});

test('tells of brackets nested beyond measure', () => {
  expect(scanJson('['.repeat(MAX_LEVELS) + ']'.repeat(MAX_LEVELS)).tooDeepAt).toBeNull();
  expect(scanJson('[{"a":'.repeat(500_000)).tooDeepAt).not.toBeNull();
});

test('tells of a control character and of a turned text behind an escape', () => {
  const { faults } = readJson('map.geojson', '{"a":["\\u001b[2J"],\n"b":"\\u202etxet"}');
  expect(faults.map(({ rule, line, field }) => [rule, line, field]).sort()).toEqual([
    ['text-characters', 1, 'a[0]'],
    ['text-characters', 2, 'b'],
  ]);
});

function isSound(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
