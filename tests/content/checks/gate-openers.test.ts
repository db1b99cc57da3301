import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

const gate = (properties: string) => ({ [FILE.map]: replacing('"vehicles":true,"locked":"no"', properties) });

test('accepts a gate that is never locked, and one whose opener has a number', () => {
  expect(messagesOf(gate('"vehicles":true,"locked":"no"'))).toEqual([]);
  expect(messagesOf(gate('"ambulance":true,"locked":"night","opened_by":"bailiff","hours":"dawn to dusk"'))).toEqual(
    [],
  );
  expect(messagesOf(gate('"vehicles":false'))).toEqual([]);
});

test('warns where nobody has said whether a gate is locked', () => {
  expect(messagesOf(gate('"vehicles":true'))).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:5:1 warning Unexpected Road gate without a word on locking, expected locked: no, night or always. Add it: until then the emergency block says that it is not known. (gate-locked)",
    ]
  `);
});

test('warns of a locked gate that nobody opens, and of an opener without a number', () => {
  expect(messagesOf(gate('"ambulance":true,"locked":"always"'))).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:5:1 warning Unexpected Road gate, locked, without anyone to open it, expected opened_by with a role of the contacts in venue.md. Add the role that holds the key or the code. (gate-opener)",
    ]
  `);
  expect(messagesOf(gate('"ambulance":true,"locked":"night","opened_by":"Bailif"'))).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:5:1 warning Unexpected "Bailif" at Road gate for opened_by, expected a role of the contacts in venue.md that has a phone number. Did you mean Bailiff? (gate-opener)",
    ]
  `);
});

test('refuses a word for locking that it does not know', () => {
  expect(messagesOf(gate('"vehicles":true,"locked":"sometimes"'))).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:5:91 error Unexpected "sometimes" for locked, expected one of no, night, always. Choose one of them. (field-word)",
    ]
  `);
});
