import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import * as z from 'zod';
import { readFolder } from '../../../src/content/read-folder.ts';
import { PEG_NAME } from '../../../src/content/schemas/dated-schemas.ts';
import { eventId } from '../../../src/content/schemas/event-schema.ts';
import { choice, day, matching, number, text, wholeNumber, word, yesNo } from '../../../src/content/schemas/fields.ts';
import { jsonSchemas } from '../../../src/content/schemas/json-schemas.ts';
import {
  bearing,
  length,
  months,
  riskLevel,
  signedLength,
  slope,
  temperature,
  weight,
  windSpeed,
} from '../../../src/content/schemas/measures.ts';
import { gridReference, latitude, longitude } from '../../../src/content/schemas/position-schema.ts';

const UNITS = { length: 'm', weight: 'lb' } as const;
const ajv = new Ajv2020({ allowUnionTypes: true, allErrors: true });

interface Field {
  readonly schema: z.ZodType;
  /** What the check refuses and a schema cannot say, with the reason; nothing where it says all. */
  readonly beyond?: (written: string) => boolean;
  readonly because?: string;
}

const feet = (metres: number) => metres / 0.3048;
const hasLetters = (written: string): boolean => /[a-z°]/i.test(written);

/** Every kind of field there is. */
const FIELDS: Readonly<Record<string, Field>> = {
  day: {
    schema: day(),
    beyond: (written) => /-02-29$/.test(written),
    because: 'which years are leap years takes arithmetic',
  },
  length: {
    schema: length(UNITS, 'how long', 20),
    beyond: (written) =>
      (Number(written) > 20 && Number(written) <= Math.ceil(feet(20))) ||
      hasLetters(written) ||
      /['"′″’”]/.test(written),
    because: 'a limit in metres takes arithmetic in any other unit, and so do inches of a foot',
  },
  'signed length': {
    schema: signedLength(UNITS, 'how high', 20),
    beyond: (written) =>
      (Math.abs(Number(written.replace('−', '-'))) > 20 && Math.abs(Number(written)) <= Math.ceil(feet(20))) ||
      hasLetters(written) ||
      /['"′″’”−]/.test(written),
    because: 'as with a length',
  },
  weight: {
    schema: weight(UNITS, 'the bag'),
    beyond: (written) => hasLetters(written) || /^\d{4,}-/.test(written),
    because: 'a limit in kilograms takes arithmetic in any other unit, and so do ounces of a pound',
  },
  slope: {
    schema: slope(),
    beyond: (written) => /deg|°/i.test(written) || /(?:in|:)\s*[0.]+$/i.test(written),
    because: 'a limit in degrees is a number within a text',
  },
  bearing: { schema: bearing() },
  temperature: {
    schema: temperature(),
    beyond: (written) => /c/i.test(written) || /^−|^\+/.test(written),
    because: 'a limit in degrees is a number within a text',
  },
  'wind speed': {
    schema: windSpeed(),
    beyond: hasLetters,
    because: 'a limit in metres a second takes arithmetic in mph',
  },
  months: {
    schema: months(),
    beyond: () => true,
    because: 'months are words of a heading; what names one is told by the reader',
  },
  risk: { schema: riskLevel('how bad') },
  number: { schema: number('how much', 0.5, 72) },
  'whole number': { schema: wholeNumber('how many', 0, 20) },
  latitude: { schema: latitude() },
  longitude: { schema: longitude() },
  'grid reference': {
    schema: gridReference(),
    beyond: (written) => /^[A-HJ-Z]{2}/i.test(written),
    because: 'which squares lie in Great Britain, and whether both halves have as many figures',
  },
  'peg name': { schema: matching(PEG_NAME, 'peg-name', 'a peg', 'Mend it.') },
  event: { schema: eventId() },
  word: { schema: word('a word') },
  choice: { schema: choice(['open', 'closed']) },
  'yes or no': { schema: yesNo('whether') },
  text: { schema: text('any text') },
};

/** Slips and near misses of every kind, and what is right. */
const SLIPS = [
  ...[
    '-',
    '23lb8',
    '23lb 8oz',
    '23/8',
    '23-08',
    '23-16',
    '23-8-15',
    '23-8-16',
    '23,8',
    '850 g',
    '1e5',
    '٣',
    '0',
    '-0',
    '1001 kg',
  ],
  ...['2026-13-01', '2026-04-31', '2026-02-30', '2025-02-29', '2026-1-1', '21.11.2026', '0000-01-01', '2026-11-21'],
  ...[
    '1.4 m',
    '4 ft 6 in',
    '4 ft 13 in',
    '12 furlongs',
    '-1 m',
    '2500',
    '19.9',
    '20.1',
    '66',
    '.5',
    '5.',
    '1.4m',
    '45 CM',
    '4\' 6"',
  ],
  ...[
    'N',
    'nne',
    'NNX',
    '360',
    '360.5',
    '361',
    '48 deg',
    '48 bananas',
    '0',
    '1 in 2',
    '1 in 0',
    '26 deg',
    '91 deg',
    '26',
  ],
  ...[
    '12.5 C',
    '60',
    '-31',
    '4 m/s',
    '9 mph',
    '66',
    'Beaufort 4',
    'true',
    'yes',
    'True',
    'open',
    'Open',
    'closed',
    'opne',
  ],
  ...['52.75', '91', '181', '-0.05', '52°45′', 'TF 3127 1880', 'tf31271880', 'TF 312 1880', 'II 31 18', 'XX 3127 1880'],
  ...[
    'kiln-pool',
    'Kiln Pool',
    '14a',
    '14 a',
    '2.5',
    '-3',
    '6',
    '5',
    '1',
    '0.4',
    '72.5',
    '20',
    '21',
    '1.5',
    'March to August',
    'Smarch',
  ],
  'x'.repeat(2001),
];
const made = fc.oneof(
  fc.constantFrom(...SLIPS),
  fc.integer({ min: -500, max: 3000 }).map(String),
  fc.double({ min: -400, max: 400, noNaN: true }).map((value) => value.toFixed(2)),
  fc
    .tuple(
      fc.integer({ min: 0, max: 40 }),
      fc.constantFrom('-', '/', ':', ' ', ' ft ', ' lb '),
      fc.integer({ min: 0, max: 20 }),
    )
    .map((parts) => parts.join('')),
  fc.string({ maxLength: 12 }),
);

/** A value as YAML hands it to an editor; null where it is no plain value at all. */
function asWritten(written: string): { readonly value: unknown } | null {
  // Quoted, or with a mark that YAML takes for its own.
  if (/^["'!%&*@`|>?]/.test(written)) return null;
  try {
    const value: unknown = parse(written);
    return value === null || typeof value === 'object' ? null : { value };
  } catch {
    return null;
  }
}

describe.each(Object.entries(FIELDS))('a field of kind "%s"', (_, { schema, beyond = () => false }) => {
  const json = z.toJSONSchema(schema, { io: 'input' });
  const accepts = ajv.compile(json);

  test('is refused by its JSON Schema wherever the check refuses it, as far as a schema can, and never where it is right', () => {
    fc.assert(
      fc.property(made, (written) => {
        const plain = asWritten(written);
        // What a text holds unseen, and where it ends, YAML and the check see alike.
        if (plain === null || written.trim() !== written || /[#\p{C}]/u.test(written)) return;
        const isRight = schema.safeParse(written).success;
        const isLetThrough = accepts(plain.value);
        // A word for yes or no stands for itself in a text; as a value of YAML it is none.
        if (isRight && typeof plain.value !== 'boolean') expect([written, isLetThrough]).toEqual([written, true]);
        // What YAML makes a number or a yes of stands there as that, however it was written: 5. as 5, True as true.
        const isAsItStands = typeof plain.value === 'string' || String(plain.value) === written;
        if (!isRight && isAsItStands && !beyond(written)) expect([written, isLetThrough]).toEqual([written, false]);
      }),
      { numRuns: 600 },
    );
  });
});

test('every exception is said why', () => {
  for (const [kind, { beyond, because }] of Object.entries(FIELDS)) {
    expect([kind, beyond === undefined]).toEqual([kind, because === undefined]);
  }
});

/** The demo venue, as it lies on the disk. */
const { texts: DEMO } = await readFolder(fileURLToPath(new URL('../../../content', import.meta.url)));
const frontMatter = (path: string): Readonly<Record<string, unknown>> =>
  parse(/^---\n([\s\S]*?)\n---\n/.exec(DEMO.get(path) ?? '')?.[1] ?? '');

describe('the schema files', () => {
  const compiled = new Map(
    [...jsonSchemas()].map(([name, text_]) => [name.replace('.json', ''), ajv.compile(JSON.parse(text_))]),
  );
  const KIND_OF = [
    [/^venue\.md$/, 'venue'],
    [/^waters\/.*\.md$/, 'water'],
    [/^pegs\//, 'peg'],
    [/^notices\//, 'notice'],
    [/^matches\//, 'match'],
    [/^leagues\//, 'league'],
  ] as const;

  test('let every record of the demo venue through', () => {
    let seen = 0;
    for (const path of DEMO.keys()) {
      const kind = KIND_OF.find(([pattern]) => pattern.test(path))?.[1];
      if (kind === undefined) continue;
      const accepts = compiled.get(kind)!;
      expect([path, accepts(frontMatter(path)), accepts.errors]).toEqual([path, true, null]);
      seen += 1;
    }
    expect(seen).toBeGreaterThan(90);
  });

  test.each([
    ['a latitude without a longitude', 'peg', { position: { lat: 52.7 } }, '/position'],
    ['a place given twice', 'peg', { position: { lat: 52.7, lng: 0, grid: 'TF 3127 1880' } }, '/position'],
    ['a field nobody knows', 'peg', { colour: 'red' }, ''],
    ['a facing beyond the circle', 'peg', { facing: 400 }, '/facing'],
    [
      'a severity of seven',
      'peg',
      { hazards: [{ kind: 'slippery', place: 'x', severity: 7, likelihood: 1, 'found-on': '2026-01-01' }] },
      '/hazards/0/severity',
    ],
    ['a stand-off below the least', 'venue', { 'stand-off': { distance: 12 } }, '/stand-off/distance'],
    ['units nobody weighs in', 'venue', { units: { length: 'm', weight: 'stone' } }, '/units/weight'],
  ])('refuse %s', (_, kind, change, place) => {
    const path = kind === 'venue' ? 'venue.md' : [...DEMO.keys()].find((one) => one.startsWith('pegs/'))!;
    const accepts = compiled.get(kind)!;
    expect(accepts({ ...frontMatter(path), ...change })).toBe(false);
    expect(accepts.errors?.map(({ instancePath }) => instancePath)).toContain(place);
  });
});
