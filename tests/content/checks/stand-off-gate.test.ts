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
      "pegs/mill-pond/1.md:7:9 error Peg mill-pond/1 is open, its platform 11.5 m from 11 kV line; 30 m along the ground is needed from every overhead line, from the platform and from all that may be swept from it. Close it: write status: closed and a status-reason. No limit of pole, cast or sector keeps it open. (stand-off)",
      "pegs/mill-pond/2.md:7:9 error Peg mill-pond/2 is open, its platform 11.5 m from 11 kV line; 30 m along the ground is needed from every overhead line, from the platform and from all that may be swept from it. Close it: write status: closed and a status-reason. No limit of pole, cast or sector keeps it open. (stand-off)",
      "pegs/mill-pond/10.md:7:9 error Peg mill-pond/10 is open, its platform 11.5 m from 11 kV line; 30 m along the ground is needed from every overhead line, from the platform and from all that may be swept from it. Close it: write status: closed and a status-reason. No limit of pole, cast or sector keeps it open. (stand-off)",
    ]
  `);
});

test('refuses an open peg whose cast comes too near, and names the limit that keeps it open', () => {
  expect(messagesOf({ [FILE.map]: lineAt(52.7506) })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:7:9 error Peg mill-pond/1 is open, what may be swept from it coming within 23.8 m of 11 kV line; 30 m along the ground is needed from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { cast: 33 m } in its record. (stand-off)",
      "pegs/mill-pond/2.md:7:9 error Peg mill-pond/2 is open, what may be swept from it coming within 23.8 m of 11 kV line; 30 m along the ground is needed from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { cast: 33 m } in its record. (stand-off)",
      "pegs/mill-pond/10.md:7:9 error Peg mill-pond/10 is open, what may be swept from it coming within 23.8 m of 11 kV line; 30 m along the ground is needed from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { cast: 33 m } in its record. (stand-off)",
    ]
  `);
});

test('refuses an open peg whose pole comes too near when shipped back', () => {
  expect(messagesOf({ [FILE.map]: lineAt(52.7496) })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:7:9 error Peg mill-pond/1 is open, what may be swept from it coming within 23.3 m of 11 kV line; 30 m along the ground is needed from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { pole: 9 m } in its record. (stand-off)",
      "pegs/mill-pond/2.md:7:9 error Peg mill-pond/2 is open, what may be swept from it coming within 23.3 m of 11 kV line; 30 m along the ground is needed from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { pole: 9 m } in its record. (stand-off)",
      "pegs/mill-pond/10.md:7:9 error Peg mill-pond/10 is open, what may be swept from it coming within 23.3 m of 11 kV line; 30 m along the ground is needed from every overhead line, from the platform and from all that may be swept from it. Close it, or keep it open with limits: { pole: 9 m } in its record. (stand-off)",
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
          replacing('status: open', 'status: closed\nstatus-since: 2026-10-01\nstatus-reason: Overhead line'),
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
      "pegs/mill-pond/1.md:8:9 warning Peg mill-pond/1 is open, by the map 33.8 m clear of 11 kV line, and nobody has measured it; within 36.0 m of a line a measured distance is needed. Measure along the ground from the platform to below the nearest wire, with nothing held up, and write measured-line-distance: { distance, measured-on, method } in its record; in doubt close it and ask the network operator. (stand-off-unmeasured)",
    ]
  `);
});

test('accepts it once it is measured, and refuses it where the tape says it is inside', () => {
  const measured = (metres: number) =>
    `measured-line-distance: { distance: ${metres} m, measured-on: 2026-11-12, method: tape }\n`;
  expect(messagesOf(nearLine(measured(37)))).toEqual([]);
  expect(messagesOf(nearLine(measured(29)))[0]).toContain('error Peg mill-pond/1 is open, its platform 29.0 m');
});

const hazardOfLine = (fields: string) => ({
  'pegs/mill-pond/1.md': replacing(
    'hazards:\n',
    `hazards:\n  - kind: overhead-line\n    place: over the platform\n    severity: 5\n    likelihood: 5\n    found-on: 2026-11-10\n${fields}`,
  ),
});
const noLine = (text: string) =>
  text
    .split('\n')
    .filter((line) => !line.includes('overhead-line'))
    .join('\n');

test('refuses an open peg whose record knows of wires, however far off the mapped line is', () => {
  expect(messagesOf(hazardOfLine(''))).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:9:11 error Peg mill-pond/1 is open, with no distance to the overhead line of its record, "over the platform"; 30 m along the ground is needed from every overhead line, mapped or not, from the platform and from all that may be swept from it. Close it until the line is measured: write its distance in the hazard (along the ground from the platform to below the nearest wire, with nothing held up), or line: and its name where it is the one on the map. Wires that are gone get cleared-on. (stand-off-recorded)",
    ]
  `);
});

test('refuses it in a venue without a mapped line too', () => {
  const messages = messagesOf({ [FILE.map]: noLine, ...hazardOfLine('') });
  expect(messages).toHaveLength(1);
  expect(messages[0]).toContain('with no distance to the overhead line of its record, "over the platform"');
});

test('counts the distance a record gives from all that is swept, in every direction unless it gives the bearing', () => {
  // A cast of 40 m and a stand-off of 30 m: 69 m in any direction is too near, 71 m is not; behind, 16 m of pole count.
  const counts = (fields: string) => messagesOf({ [FILE.map]: noLine, ...hazardOfLine(fields) }).length;
  expect(['    distance: 69 m\n', '    distance: 71 m\n'].map(counts)).toEqual([1, 0]);
  expect([45, 47].map((metres) => counts(`    distance: ${metres} m\n    bearing: S\n`))).toEqual([1, 0]);
});

test('takes a recorded line for the mapped one only where the record names it', () => {
  expect(messagesOf(hazardOfLine('    line: 11 kV line\n'))).toEqual([]);
  expect(messagesOf(hazardOfLine('    line: line-1\n'))).toEqual([]);
  expect(
    messagesOf(hazardOfLine('    line: 33 kV line\n')).map((message) => message.match(/\(([a-z-]+)\)$/)?.[1]),
  ).toEqual(['stand-off-recorded', 'line-unknown']);
});

test('leaves a recorded line out once it is cleared, and accepts any on a closed peg', () => {
  expect(
    messagesOf(
      hazardOfLine('    cleared-on: 2026-11-12\n    cleared-by: Secretary\n    cleared-why: looked at and gone\n'),
    ),
  ).toEqual([]);
  expect(
    messagesOf({
      'pegs/mill-pond/1.md': (text) =>
        replacing(
          'status: open',
          'status: closed\nstatus-since: 2026-10-01\nstatus-reason: wires',
        )(hazardOfLine('')['pegs/mill-pond/1.md'](text)),
    }),
  ).toEqual([]);
});

test('counts what was measured where no line is mapped', () => {
  const measured = (metres: number) => ({
    [FILE.map]: noLine,
    'pegs/mill-pond/1.md': replacing(
      'features:',
      `measured-line-distance: { distance: ${metres} m, measured-on: 2026-11-12, method: tape }\nfeatures:`,
    ),
  });
  expect(messagesOf(measured(8))).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:6:37 error Peg mill-pond/1 is open, what may be swept from it coming within 0.0 m, in whatever direction it lies, of the line that was measured; 30 m along the ground is needed from every overhead line, mapped or not, from the platform and from all that may be swept from it. Close it; or draw the line on the map, state its bearing, or limit pole and cast, so that what is swept stays outside. (stand-off-recorded)",
    ]
  `);
  expect(messagesOf(measured(71))).toEqual([]);
});

test('lets a tape stand for a recorded line found before it, not for one found after it', () => {
  const measuredOn = (day: string) => {
    const { 'pegs/mill-pond/1.md': addHazard } = hazardOfLine('');
    return messagesOf({
      [FILE.map]: noLine,
      'pegs/mill-pond/1.md': (text: string) =>
        addHazard(text).replace(
          'features:',
          `measured-line-distance: { distance: 80 m, measured-on: ${day}, method: tape }\nfeatures:`,
        ),
    });
  };
  expect(measuredOn('2026-11-10')).toEqual([]);
  expect(measuredOn('2026-11-09')).toHaveLength(1);
});

test('sweeps the whole platform: a 15 m jetty reaches as far as it is long', () => {
  const jetty = (measuredAt: string) =>
    messagesOf({
      // 45 m behind the position, 41 m after the allowances; nothing is swept but the platform.
      [FILE.map]: lineAt(52.749585),
      ...Object.fromEntries(
        ['2', '10'].map((peg) => [
          `pegs/mill-pond/${peg}.md`,
          replacing('status: open', 'status: closed\nstatus-since: 2026-10-01\nstatus-reason: line'),
        ]),
      ),
      'pegs/mill-pond/1.md': replacing(
        'features:',
        `limits: { pole: 0 m, cast: 0 m }\nplatform: { kind: timber, length: 15 m${measuredAt} }\nfeatures:`,
      ),
    });
  expect(jetty('')[0]).toContain('its platform 26.');
  expect(jetty(', measured-at: water-end')[0]).toContain('its platform 26.');
  expect(jetty(', measured-at: bank-end')).toEqual([]);
});

test('sweeps a rod behind wherever casting is allowed, though the pole is limited to nothing', () => {
  // 39 m behind, 35 m after the allowances: a rod and the line below its tip take 6 m of it.
  const limits = (text: string) => ({
    [FILE.map]: lineAt(52.749638),
    ...Object.fromEntries(
      ['2', '10'].map((peg) => [
        `pegs/mill-pond/${peg}.md`,
        replacing('status: open', 'status: closed\nstatus-since: 2026-10-01\nstatus-reason: line'),
      ]),
    ),
    'pegs/mill-pond/1.md': replacing(
      'features:',
      `limits: ${text}\nmeasured-line-distance: { distance: 39 m, measured-on: 2026-11-12, method: tape }\nfeatures:`,
    ),
  });
  expect(messagesOf(limits('{ pole: 0 m, cast: 20 m }'))[0]).toContain('what may be swept from it coming within 29.');
  expect(messagesOf(limits('{ pole: 0 m, cast: 0 m }'))).toEqual([]);
});
