import { expect, test } from 'vitest';
import { FILE, messagesOf } from '../small-venue.ts';

/** Depths along a row of places two metres apart. */
const soundings = (...depths: string[]) => ({
  [FILE.soundings]: `lat,lng,peg,distance,bearing,depth,date,level\n${depths
    .map((depth, i) => `${(52.7502 + i * 0.000018).toFixed(6)},-0.0506,,,,${depth},2026-04-01,`)
    .join('\n')}\n`,
});

test('asks about a depth that lost its point among others', () => {
  expect(messagesOf(soundings('1.4', '1.5', '15', '1.6', '1.5'))).toMatchInlineSnapshot(`
    [
      "soundings/mill-pond.csv:4:22 warning Unexpected depth of 15.0 m where all others within 10 m are 1.4 m to 1.6 m, expected a depth near those around it. Look for a lost decimal point, swapped figures or the wrong unit. If it is a hole or a bar, plumb beside it too and leave it: it counts as it stands. (sounding-odd)",
    ]
  `);
});

test('takes a shelf, a slope and a lone depth as they are', () => {
  expect(messagesOf(soundings('0.5', '0.6', '2.9', '3.1', '3.2'))).toEqual([]);
  expect(messagesOf(soundings('0.5', '1.2', '1.9', '2.6', '3.3', '4.0'))).toEqual([]);
  expect(messagesOf(soundings('1.4', '15'))).toEqual([]);
});

test('knows depths taken from a peg by their place, and says them in the venue’s unit', () => {
  const rows = ['4', '5', '6', '7', '8'].map((out, i) => `,,1,${out},,${i === 2 ? '30 ft' : '5 ft'},2026-04-01,`);
  const [told = '', ...others] = messagesOf({
    [FILE.venue]: (text) => text.replace('length: m', 'length: ft'),
    [FILE.soundings]: `lat,lng,peg,distance,bearing,depth,date,level\n${rows.join('\n')}\n`,
  }).filter((message) => message.includes('sounding'));
  expect(told).toContain('depth of 30.0 ft where all others within 10 m are 5.0 ft to 5.0 ft');
  expect(others).toEqual([]);
});
