import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anglerName, soundOf } from '../../../src/content/anglers/angler-name.ts';
import { assignReferences, type WrittenName } from '../../../src/content/anglers/assign-references.ts';
import { formatRegister, keyedDigest, type RegisterRow, readRegister } from '../../../src/content/anglers/register.ts';
import { Asker, NO_ANSWERS } from '../../../src/content/papers/questions.ts';

const KEY = new Uint8Array(32).fill(7);
const draw = (salt: string): Uint8Array => new TextEncoder().encode(keyedDigest(KEY, 'draw', salt)).subarray(0, 8);

function assign(names: readonly (string | WrittenName)[], register: readonly RegisterRow[] = []) {
  const asker = new Asker(NO_ANSWERS);
  // Each in a match of its own unless it says otherwise.
  const written = names.map((name, index) => (typeof name === 'string' ? { text: name, match: String(index) } : name));
  return { asker, ...assignReferences(written, KEY, register, new Map(), draw, asker) };
}

describe('anglerName', () => {
  it.each([
    ['PASK, Peter', 'peter pask'],
    ['Mr. Peter  Pask (J)', 'peter pask'],
    ['peter pask 2', 'peter pask'],
    ['Zoë O’Larder', 'zoe olarder'],
    ['P. Pask', 'p pask'],
  ])('makes %s comparable', (written, full) => {
    expect(anglerName(written)?.full).toBe(full);
  });

  it('finds no name where no letter is', () => {
    expect(anglerName(' 12 - ')).toBeNull();
  });

  // The National Archives' page on the Soundex system; these examples from memory.
  it.each([
    ['washington', 'W252'],
    ['lee', 'L000'],
    ['gutierrez', 'G362'],
    ['pfister', 'P236'],
    ['jackson', 'J250'],
    ['tymczak', 'T522'],
    ['ashcraft', 'A261'],
  ])('sounds %s as %s', (surname, code) => {
    expect(soundOf(surname)).toBe(code);
  });
});

describe('keyedDigest', () => {
  it('is HMAC-SHA-256 as RFC 2104, section 2, writes it out, cut to 16 digits', () => {
    const sha256 = (...parts: readonly Uint8Array[]) =>
      new Uint8Array(createHash('sha256').update(Buffer.concat(parts)).digest());
    const padded = (byte: number) => new Uint8Array(64).map((_, index) => (KEY[index] ?? 0) ^ byte);
    const message = new TextEncoder().encode('full\u0000peter pask');
    const outer = sha256(padded(0x5c), sha256(padded(0x36), message));
    expect(keyedDigest(KEY, 'full', 'peter pask')).toBe(Buffer.from(outer).toString('hex').slice(0, 16));
  });
});

describe('assignReferences', () => {
  it('gives one person one reference across spellings', () => {
    const { references, asker, added } = assign(['Peter Pask', 'PASK, PETER', 'Pete Pask', 'P Pask', 'Mr P. Pask']);
    expect(asker.open).toEqual([]);
    expect(added).toBe(1);
    expect(new Set(references.values()).size).toBe(1);
  });

  it('keeps two names of one match apart', () => {
    const { references, asker } = assign([
      { text: 'Peter Pask', match: 'm' },
      { text: 'P Pask', match: 'm' },
    ]);
    expect(asker.open).toEqual([]);
    expect(new Set(references.values()).size).toBe(2);
  });

  it.each([
    ['another first name with the same initial', ['Paul Pask', 'Peter Pask']],
    ['a father and a daughter', ['Ron Pask', 'Ann Pask']],
    ['a letter more', ['Ron Pask', 'Ron Paske']],
    ['another letter, which sounds otherwise', ['Ada Quill', 'Ada Quilt']],
    ['another first letter', ['Ron Pask', 'Ron Mask']],
    ['two letters that changed places', ['Ron Larder', 'Ron Lardre']],
  ])('asks of %s', (_, names) => {
    const { asker } = assign(names);
    expect(asker.open).toHaveLength(1);
    expect(asker.open[0]!.choices?.map(({ words }) => words)).toEqual([
      'somebody on these papers, not in the log yet',
      'somebody new',
    ]);
  });

  it.each([
    ['two letters', ['Ada Quill', 'Ada Quarl']],
    ['a letter of a short surname', ['Ron Cox', 'Ron Fox']],
    ['a letter, with another first name', ['Ada Quill', 'Bea Quilt']],
  ])('takes names that differ by %s for two people', (_, names) => {
    const { asker, added } = assign(names);
    expect([asker.open, added]).toEqual([[], 2]);
  });

  it('keeps no name, and no letters of one, in the register', () => {
    const names = ['Peter Pask', 'Ada Quill', 'Zoë O’Larder'];
    const kept = formatRegister(assign(names).rows);
    for (const word of names.flatMap((name) => name.toLowerCase().split(' ')))
      expect(kept.toLowerCase()).not.toContain(word);
    expect(readRegister(kept)).toMatchObject({ ok: true });
  });

  it('finds everybody again, whatever the order of the papers', () => {
    const person = fc.tuple(
      fc.constantFrom('Ada', 'Bo', 'Cy', 'Di'),
      fc.constantFrom('Quill', 'Reed', 'Sedge', 'Teal', 'Yarrow'),
    );
    fc.assert(
      fc.property(
        fc.uniqueArray(person, { selector: ([, surname]) => surname, minLength: 1, maxLength: 5 }),
        (people) => {
          const names = people.map((words) => words.join(' '));
          const first = assign(names);
          const again = assign(
            names.toReversed().map((name) => name.toUpperCase()),
            first.rows,
          );
          expect(again.added).toBe(0);
          for (const name of names) expect(again.references.get(name.toUpperCase())).toBe(first.references.get(name));
        },
      ),
    );
  });
});
