import { expect, test } from 'vitest';
import { FILE, messagesOf } from '../small-venue.ts';

test('accepts a water with its record and its map', () => {
  expect(messagesOf({})).toEqual([]);
});

test('refuses a water without a map', () => {
  expect(messagesOf({ [FILE.map]: null })).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:1:1 error Found no such file, expected a file with its outline, since the folder has the other half of mill-pond. Write it, or correct the name of the other file. (water-file)",
    ]
  `);
});

test('refuses a water without a record', () => {
  expect(messagesOf({ [FILE.water]: null })).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.md:1:1 error Found no such file, expected a file with its name, kind and datum, since the folder has the other half of mill-pond. Write it, or correct the name of the other file. (water-file)",
    ]
  `);
});

test('refuses pegs, soundings and readings filed under a water that is not there', () => {
  expect(
    messagesOf({
      'gauge/mil-pond.csv': 'date,level,water_temperature\n',
      'soundings/quarry.csv': 'depth,date\n',
    }),
  ).toMatchInlineSnapshot(`
    [
      "gauge/mil-pond.csv:1:1 error Unexpected water mil-pond in the path, expected one of mill-pond. Did you mean mill-pond? (water-unknown)",
      "soundings/quarry.csv:1:1 error Unexpected water quarry in the path, expected one of mill-pond. Write waters/quarry.md and waters/quarry.geojson, or move the file. (water-unknown)",
    ]
  `);
});

test('refuses a folder without any water', () => {
  expect(
    messagesOf({
      [FILE.map]: null,
      [FILE.water]: null,
      [FILE.peg]: null,
      'pegs/mill-pond/2.md': null,
      'pegs/mill-pond/10.md': null,
      [FILE.notice]: null,
      [FILE.round]: null,
      [FILE.events]: null,
      [FILE.sessions]: null,
      [FILE.soundings]: null,
      [FILE.gauge]: null,
    }),
  ).toMatchInlineSnapshot(`
    [
      "waters:1:1 error Found no water, expected a water: waters/<name>.md and waters/<name>.geojson. Write both; npm run -s venue -- start FOLDER shows how. (water-missing)",
    ]
  `);
});

test('refuses a water named as a page of the guide', () => {
  expect(
    messagesOf({
      'waters/safety.md': '---\nname: Safety\nkind: pit\ndatum: the sill\nclose-season: none\n---\n',
      'waters/safety.geojson': '{"type":"FeatureCollection","features":[]}',
    }).filter((message) => message.includes('water-name-taken')),
  ).toEqual([
    "waters/safety.md:1:1 error Unexpected water called safety, expected another name: the guide has a page of its own at safety/. Rename the water's files and folders, such as safety-water, and the water in its records and logs. (water-name-taken)",
  ]);
});
