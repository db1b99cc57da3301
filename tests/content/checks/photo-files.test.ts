import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('refuses a picture that is not in photos', () => {
  expect(
    messagesOf({ [FILE.peg]: replacing('features:', 'photos: [{ file: mill-pond-1.jpg, alt: The swim }]\nfeatures:') }),
  ).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:6:18 error Unexpected "mill-pond-1.jpg" for photos[0].file, expected a file below photos/. Put the picture there, or take the entry out. (photo-missing)",
    ]
  `);
});
