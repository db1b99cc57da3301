import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('refuses a sounding from a peg that is not there', () => {
  expect(messagesOf({ [FILE.soundings]: replacing(',,1,6,', ',,7,6,') })).toMatchInlineSnapshot(`
    [
      "soundings/mill-pond.csv:3:3 error Unexpected "7" for peg, expected one of the 3 pegs of mill-pond. Correct the peg, or write its record in pegs/mill-pond/. (peg-unknown)",
    ]
  `);
});
