import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

/** The small venue's line moved to another latitude; the pegs stand at 52.74999 and face north. */
const lineAt = (lat: number) => (text: string) => text.replaceAll('52.7525', String(lat));

test('accepts an open peg whose platform and swept area keep the stand-off', () => {
  expect(messagesOf({ [FILE.map]: lineAt(52.7511) })).toEqual([]);
});

test('refuses an open peg whose platform is inside, and names peg, line, distance and stand-off', () => {
  expect(messagesOf({ [FILE.map]: lineAt(52.74985) })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:7:9 error Unexpected open peg mill-pond/1, its platform 11.5 m from 11 kV line, expected 30 m along the ground from every overhead line, from the platform and from all that may be swept from it. Close it: write status: closed and a status-reason. No limit of pole, cast or sector keeps it open. (stand-off)",
      "pegs/mill-pond/2.md:7:9 error Unexpected open peg mill-pond/2, its platform 11.5 m from 11 kV line, expected 30 m along the ground from every overhead line, from the platform and from all that may be swept from it. Close it: write status: closed and a status-reason. No limit of pole, cast or sector keeps it open. (stand-off)",
      "pegs/mill-pond/10.md:7:9 error Unexpected open peg mill-pond/10, its platform 11.5 m from 11 kV line, expected 30 m along the ground from every overhead line, from the platform and from all that may be swept from it. Close it: write status: closed and a status-reason. No limit of pole, cast or sector keeps it open. (stand-off)",
    ]
  `);
});

test('refuses an open peg whose cast comes too near, and names the limit that keeps it open', () => {
  expect(messagesOf({ [FILE.map]: lineAt(52.7506) })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:7:9 error Unexpected open peg mill-pond/1, what may be swept from it coming within 23.8 m of 11 kV line, expected 30 m along the ground from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { cast: 33 m } in its record. (stand-off)",
      "pegs/mill-pond/2.md:7:9 error Unexpected open peg mill-pond/2, what may be swept from it coming within 23.8 m of 11 kV line, expected 30 m along the ground from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { cast: 33 m } in its record. (stand-off)",
      "pegs/mill-pond/10.md:7:9 error Unexpected open peg mill-pond/10, what may be swept from it coming within 23.8 m of 11 kV line, expected 30 m along the ground from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { cast: 33 m } in its record. (stand-off)",
    ]
  `);
});

test('refuses an open peg whose pole comes too near when shipped back', () => {
  expect(messagesOf({ [FILE.map]: lineAt(52.7496) })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:7:9 error Unexpected open peg mill-pond/1, what may be swept from it coming within 23.3 m of 11 kV line, expected 30 m along the ground from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { pole: 9 m } in its record. (stand-off)",
      "pegs/mill-pond/2.md:7:9 error Unexpected open peg mill-pond/2, what may be swept from it coming within 23.3 m of 11 kV line, expected 30 m along the ground from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { pole: 9 m } in its record. (stand-off)",
      "pegs/mill-pond/10.md:7:9 error Unexpected open peg mill-pond/10, what may be swept from it coming within 23.3 m of 11 kV line, expected 30 m along the ground from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { pole: 9 m } in its record. (stand-off)",
    ]
  `);
});

test('accepts the peg once its record holds the limit', () => {
  expect(
    messagesOf({
      [FILE.map]: lineAt(52.7506),
      ...Object.fromEntries(
        ['1', '2', '10'].map((peg) => [
          `pegs/mill-pond/${peg}.md`,
          replacing('features:', 'limits: { pole: 11 m, cast: 20 m }\nfeatures:'),
        ]),
      ),
    }),
  ).toEqual([]);
});

test('accepts a closed peg below the line', () => {
  expect(
    messagesOf({
      [FILE.map]: lineAt(52.74985),
      ...Object.fromEntries(
        ['1', '2', '10'].map((peg) => [
          `pegs/mill-pond/${peg}.md`,
          replacing('status: open', 'status: closed\nstatus-reason: Overhead line'),
        ]),
      ),
    }),
  ).toEqual([]);
});

/** Nothing is swept, so that the platform’s own distance counts: 37.8 m as mapped, 33.8 m after the allowances. */
const nearLine = (measured: string) => ({
  [FILE.map]: lineAt(52.75033),
  ...Object.fromEntries(
    ['1', '2', '10'].map((peg) => [
      `pegs/mill-pond/${peg}.md`,
      replacing('features:', `limits: { pole: 0 m, cast: 0 m }\n${measured}features:`),
    ]),
  ),
});

test('warns of an open peg within a fifth of the stand-off that nobody has measured', () => {
  expect(messagesOf(nearLine('')).slice(0, 1)).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:8:9 warning Unexpected open peg mill-pond/1, by the map 33.8 m clear of 11 kV line, and no measured distance, expected a measured distance for a peg within 36.0 m of a line. Measure along the ground from the platform to below the nearest wire, with nothing held up, and write measured-line-distance: { distance, measured-on, method } in its record; in doubt close it and ask the network operator. (stand-off-unmeasured)",
    ]
  `);
});

test('accepts it once it is measured, and refuses it where the tape says it is inside', () => {
  const measured = (metres: number) =>
    `measured-line-distance: { distance: ${metres} m, measured-on: 2026-11-12, method: tape }\n`;
  expect(messagesOf(nearLine(measured(37)))).toEqual([]);
  expect(messagesOf(nearLine(measured(29)))[0]).toContain('error Unexpected open peg mill-pond/1, its platform 29.0 m');
});
