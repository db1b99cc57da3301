import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatFault } from '../../../src/content/format-fault.ts';
import { readYaml } from '../../../src/content/sources/yaml-source.ts';
import { FILE, faultsOf, messagesOf, replacing } from '../small-venue.ts';

// YAML 1.2.2, section 7.4: in a flow collection a comma ends the entry.

const messagesFor = (text: string) => readYaml('a.md', text, 1).faults.map((fault) => formatFault(fault));

describe('a comma inside braces or brackets', () => {
  test('tells both readings of a decimal comma in a peg record', () => {
    const slip = replacing('status: open', 'status: open\nplatform: { kind: timber, width: 1,5 m }');
    expect(messagesOf({ [FILE.peg]: slip })).toMatchInlineSnapshot(`
      [
        "pegs/mill-pond/1.md:8:36 error Unexpected 1,5 m, which reads as 1 and then a field "5 m", expected 1.5 m with a point, or two values apart. Write 1.5 m if that was meant; a comma between braces or brackets ends the value. (decimal-comma)",
      ]
    `);
  });

  test('tells both readings in the venue’s settings', () => {
    const slip = replacing('pole: 16 m', 'pole: 9,5 m');
    expect(messagesOf({ [FILE.venue]: slip })).toMatchInlineSnapshot(`
      [
        "venue.md:18:28 error Unexpected 9,5 m, which reads as 9 and then a field "5 m", expected 9.5 m with a point, or two values apart. Write 9.5 m if that was meant; a comma between braces or brackets ends the value. (decimal-comma)",
      ]
    `);
  });

  test('tells of a name without a value, which would be dropped', () => {
    expect(messagesFor('platform: { kind: timber, sound }\n')).toMatchInlineSnapshot(`
      [
        "a.md:1:27 error Unexpected "sound" after a comma, without a value for platform.kind, expected name: value between the commas. Put a value that holds a comma in quotes, or write a colon and a value behind the name. (field-without-value)",
      ]
    `);
  });

  test('tells of an entry of a list cut in two', () => {
    expect(messagesFor('reach: [ what: shelf, distance: 2,5 m ]\n')).toMatchInlineSnapshot(`
      [
        "a.md:1:35 error Unexpected 2,5 m, which reads as 2 and then an entry "5 m", expected 2.5 m with a point, or two values apart. Write 2.5 m if that was meant; a comma between braces or brackets ends the value. (decimal-comma)",
      ]
    `);
  });

  test('lets stand what is written apart or in quotes', () => {
    expect(messagesFor('a: { b: 1, c: "1,5 m", d: , e: "x, y" }\nf: [12,13, 14]\ng: 1,5 m\n')).toEqual([]);
  });
});

test('no number between braces is ever read as a part of what was written', () => {
  const fields = ['width', 'length', 'height', 'rail-height'] as const;
  const figure = fc.nat({ max: 19 });
  const decimals = fc.stringMatching(/^[0-9]{1,3}$/);
  const gap = fc.constantFrom('', ' ', '\n    ');
  const unit = fc.constantFrom('', ' m', 'm', ' ft', ' cm');
  const separator = fc.constantFrom(',', '.', ', ');
  fc.assert(
    fc.property(
      fc.constantFrom(...fields),
      figure,
      separator,
      decimals,
      unit,
      gap,
      fc.boolean(),
      (field, whole, mark, part, unitText, space, isLast) => {
        const written = `${whole}${mark}${part}${unitText}`;
        const inside = isLast
          ? `kind: timber, ${field}: ${written}${space}`
          : `${field}: ${written},${space} kind: timber`;
        const slip = replacing('status: open', `status: open\nplatform: {${inside} }`);
        const rules = faultsOf({ [FILE.peg]: slip })
          .filter(({ severity }) => severity === 'error')
          .map(({ rule }) => rule);
        // With a point the whole figure is read: it may be out of range, but nothing of it is cut off.
        if (mark === '.') expect(rules.every((rule) => rule === 'length-range')).toBe(true);
        else expect(rules).toContain(mark === ',' ? 'decimal-comma' : 'field-without-value');
      },
    ),
  );
});
