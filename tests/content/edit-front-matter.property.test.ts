import fc from 'fast-check';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { editFrontMatter, type FieldEdit } from '../../src/content/edit-front-matter.ts';
import { scalarText } from '../../src/content/yaml-edit/scalar-text.ts';

/** A line of a generated record, and the field it belongs to; null for comments, blank lines and the body. */
interface TaggedLine {
  readonly field: string | null;
  readonly text: string;
}

const words = fc.constantFrom(
  'open',
  'South bank',
  'by the reed bed',
  '1.8 m',
  '4 ft 6 in',
  '2026-03-09',
  'NNE',
  '48',
  'é – ü',
);
const quoted = fc
  .tuple(words, fc.constantFrom('bare', 'single', 'double'))
  .map(([word, style]) => (style === 'bare' ? word : style === 'single' ? `'${word}'` : `"${word}"`));
const comment = fc.constantFrom('', ' # noted by hand', '   # 50 % "sure": {ask}', '\t# tab');
const gap = fc.constantFrom(' ', '  ', '\t');
const between = fc.array(fc.constantFrom('', '# ---- the board ----', '  # set in', '#'), { maxLength: 2 });

const plainField = (key: string) =>
  fc.tuple(gap, quoted, comment).map(([space, value, tail]) => [`${key}:${space}${value}${tail}`]);

const mapField = (key: string, keys: readonly string[]) =>
  fc
    .tuple(
      fc.subarray([...keys], { minLength: 1 }),
      fc.array(quoted, { minLength: keys.length, maxLength: keys.length }),
      fc.constantFrom('flow', 'flow lines', 'flow lines comma', 'block'),
      comment,
    )
    .map(([used, values, form, tail]) => {
      const entries = used.map((name, index) => `${name}: ${values[index]}`);
      if (form === 'flow') return [`${key}: { ${entries.join(', ')} }${tail}`];
      if (form === 'block') return [`${key}:${tail}`, ...entries.map((entry) => `   ${entry}${tail}`)];
      const comma = form === 'flow lines comma' ? ',' : '';
      const lines = entries.map((entry, index) => `    ${entry}${index < entries.length - 1 ? ',' : comma}${tail}`);
      return [`${key}:`, '  {', ...lines, '  }'];
    });

const listField = fc
  .tuple(
    fc.array(fc.tuple(quoted, quoted), { maxLength: 3 }),
    fc.constantFrom('block', 'flush', 'wide', 'flow items', 'flow'),
    comment,
  )
  .map(([items, form, tail]) => {
    if (items.length === 0) return [form === 'flow' ? `hazards: []${tail}` : `hazards:${tail}`];
    const maps = items.map(([kind, place]) => `{ kind: ${kind}, place: ${place} }`);
    if (form === 'flow') return [`hazards: [${maps.join(', ')}]${tail}`];
    if (form === 'flow items') return ['hazards:', ...maps.map((map) => `  - ${map}${tail}`)];
    const [lead, inner] =
      form === 'flush' ? ['- ', '  '] : form === 'wide' ? ['    -   ', '        '] : ['  - ', '    '];
    return [
      'hazards:',
      ...items.flatMap(([kind, place]) => [`${lead}kind: ${kind}${tail}`, `${inner}place: ${place}`]),
    ];
  });

const FIELDS = {
  peg: plainField('peg'),
  where: plainField('where'),
  facing: plainField('facing'),
  status: plainField('status'),
  'status-reason': plainField('status-reason'),
  clearance: mapField('clearance', ['clear-width', 'lowest-branch', 'path-width', 'measured-on']),
  platform: mapField('platform', ['kind', 'width', 'condition']),
  hazards: listField,
};

const record = fc
  .record({
    order: fc.shuffledSubarray(Object.keys(FIELDS), { minLength: 1 }),
    lines: fc.record(FIELDS),
    between: fc.array(between, { minLength: 8, maxLength: 8 }),
    body: fc.constantFrom('', 'Words.\n---\n', '## Winter\r\nLine *end* kept', '# status: open\n'),
    lineBreak: fc.constantFrom('\n', '\r\n'),
    mark: fc.constantFrom('', '\uFEFF'),
  })
  .map(({ order, lines, between: gaps, body, lineBreak, mark }) => {
    const tagged: TaggedLine[] = [{ field: null, text: `${mark}---${lineBreak}` }];
    for (const [index, field] of order.entries()) {
      tagged.push(...gaps[index]!.map((text) => ({ field: null, text: text + lineBreak })));
      tagged.push(...lines[field as keyof typeof FIELDS].map((text) => ({ field, text: text + lineBreak })));
    }
    return [...tagged, { field: null, text: `---${lineBreak}` }, { field: null, text: body }];
  });

const value = fc.oneof(words, fc.string({ maxLength: 12 }), fc.integer({ min: -9, max: 99 }), fc.boolean());
const edits = fc.array(
  fc.oneof(
    fc
      .tuple(fc.constantFrom('status', 'status-reason', 'where', 'status-since'), value)
      .map(([key, to]): FieldEdit => ({ kind: 'set', path: [key], value: to })),
    fc
      .tuple(
        fc.constantFrom(
          'clearance.path-width',
          'clearance.measured-on',
          'platform.condition',
          'measured-line-distance.distance',
        ),
        value,
      )
      .map(([path, to]): FieldEdit => ({ kind: 'set', path: path.split('.'), value: to })),
    fc
      .tuple(value, value)
      .map(([kind, place]): FieldEdit => ({ kind: 'append', path: ['hazards'], item: { kind, place } })),
    fc
      .constantFrom('status-reason', 'clearance.path-width')
      .map((path): FieldEdit => ({ kind: 'remove', path: path.split('.') })),
  ),
  { minLength: 1, maxLength: 5 },
);

const textOf = (lines: readonly TaggedLine[]): string => lines.map(({ text }) => text).join('');
const splitLines = (text: string): string[] => text.match(/[^\n]*\n|[^\n]+$/g) ?? [];
const frontMatter = (text: string): Record<string, unknown> => {
  const inner = /^\uFEFF?---\r?\n([\s\S]*?)^---\r?$/m.exec(text)![1]!;
  return (parse(inner, { schema: 'failsafe' }) as Record<string, unknown> | null) ?? {};
};

/** Taking out the last field of a map in block form would leave an empty key, which reads as something else: refused. */
function isRefusal(error: unknown): boolean {
  return error instanceof Error && /unusual way|only field/.test(error.message);
}

it('leaves every byte outside the changed fields as it was, whatever the record looks like', () => {
  fc.assert(
    fc.property(record, edits, (lines, changes) => {
      const before = textOf(lines);
      let after: string;
      try {
        after = editFrontMatter(before, changes);
      } catch (error) {
        fc.pre(!changes.some(({ kind }) => kind === 'remove') || !isRefusal(error));
        throw error;
      }
      const changed = new Set(changes.map(({ path }) => String(path[0])));
      const kept = splitLines(textOf(lines.filter(({ field }) => field === null || !changed.has(field))));
      const rest = [...splitLines(after)];
      const added: string[] = [];
      for (const line of kept) {
        while (rest.length > 0 && rest[0] !== line) added.push(rest.shift()!);
        expect(rest.shift(), `the line ${JSON.stringify(line)} is gone from ${JSON.stringify(after)}`).toBe(line);
      }
      for (const line of [...added, ...rest]) {
        const key = /^([a-z-]+):/.exec(line)?.[1];
        expect(key === undefined ? /^(\s|-|\{|\})/.test(line) : changed.has(key), line).toBe(true);
      }
    }),
    { numRuns: 800 },
  );
});

it('changes in a field that is there nothing but the value itself', () => {
  fc.assert(
    fc.property(record, value, (lines, to) => {
      const at = lines.findIndex(({ field }) => field === 'status');
      fc.pre(at >= 0);
      const before = textOf(lines);
      const line = lines[at]!.text;
      const parts = /^(status:[ \t]+)('[^']*'|"[^"]*"|[^#]*?)(\s+#.*|\s*)$/s.exec(line)!;
      const after = editFrontMatter(before, [{ kind: 'set', path: ['status'], value: to }]);
      const prefix = textOf(lines.slice(0, at)) + parts[1]!;
      const suffix = parts[3]! + textOf(lines.slice(at + 1));
      expect(after.startsWith(prefix)).toBe(true);
      expect(after.endsWith(suffix)).toBe(true);
      expect(frontMatter(after)).toEqual({ ...frontMatter(before), status: String(to) });
    }),
    { numRuns: 500 },
  );
});

it('is the identity where a field is set to what it says', () => {
  fc.assert(
    fc.property(record, (lines) => {
      const before = textOf(lines);
      // An empty field says nothing that could be set.
      const said = Object.entries(frontMatter(before)).filter(([, to]) => typeof to === 'string' && to !== '');
      const same = said.map(([key, to]): FieldEdit => ({ kind: 'set', path: [key], value: to as string }));
      expect(editFrontMatter(before, same)).toBe(before);
    }),
    { numRuns: 300 },
  );
});

it('writes any text so that YAML reads it back, on a line and within brackets', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'binary', maxLength: 20 }),
      fc.constantFrom('PLAIN', 'QUOTE_SINGLE', 'QUOTE_DOUBLE'),
      (text, style) => {
        const written = scalarText(text, style);
        expect(parse(`key: ${written} # c\nnext: 1\n`)).toEqual({ key: text, next: 1 });
        expect(parse(`[{ a: ${written} }, ${written}]`)).toEqual([{ a: text }, text]);
      },
    ),
    { numRuns: 1000 },
  );
});
