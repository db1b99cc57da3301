import { describe, expect, it } from 'vitest';
import { CannotEdit, editFrontMatter, type FieldEdit, frontMatterTexts } from '../../src/content/edit-front-matter.ts';

const set = (path: string, value: string | number | boolean): FieldEdit => ({
  kind: 'set',
  path: path.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step)),
  value,
});
const append = (path: string, item: Record<string, string | number>): FieldEdit => ({
  kind: 'append',
  path: [path],
  item,
});
const remove = (path: string): FieldEdit => ({ kind: 'remove', path: path.split('.') });

function edit(yaml: string, ...edits: FieldEdit[]): string {
  const text = editFrontMatter(`---\n${yaml}---\nbody --- \n`, edits);
  expect(text.startsWith('---\n')).toBe(true);
  expect(text.endsWith('---\nbody --- \n')).toBe(true);
  return text.slice(4, -'---\nbody --- \n'.length);
}

describe('setting a field', () => {
  it('keeps the comment behind the value', () => {
    expect(edit('status: open # open or closed\n', set('status', 'closed'))).toBe('status: closed # open or closed\n');
  });

  it('keeps the quotes of a text', () => {
    expect(edit(`a: 'x'\nb: "y"\n`, set('a', "it's"), set('b', 'say "no"'))).toBe(`a: 'it''s'\nb: "say \\"no\\""\n`);
  });

  it('quotes what YAML would read as something else', () => {
    const yaml = edit(
      'peg: "1"\n',
      set('a', 'no: yes'),
      set('b', '12'),
      set('c', '# mud'),
      set('d', 'a, b'),
      set('e', '- x'),
    );
    expect(yaml).toBe('peg: "1"\na: "no: yes"\nb: "12"\nc: "# mud"\nd: "a, b"\ne: "- x"\n');
  });

  it('changes one value within braces', () => {
    expect(edit('platform: { kind: timber, condition: sound } # new\n', set('platform.condition', 'rotten'))).toBe(
      'platform: { kind: timber, condition: rotten } # new\n',
    );
  });

  it('fills a field that was left empty', () => {
    expect(edit('a: # why\nb:\nc: { x }\n', set('a', 'one'), set('b', 2), set('c.x', 3))).toBe(
      'a: one # why\nb: 2\nc: { x: 3 }\n',
    );
  });

  it('replaces a text in block form and keeps what follows', () => {
    expect(edit('a: |\n  two\n  lines\n# next\nb: 1\n', set('a', 'one'))).toBe('a: one\n# next\nb: 1\n');
  });

  it('leaves a text alone that says the value already', () => {
    expect(edit(`a:   'x' # c\n`, set('a', 'x'))).toBe(`a:   'x' # c\n`);
  });

  it('reaches into an item of a list', () => {
    expect(
      edit(
        'hazards:\n  - kind: trip\n    found-on: 2026-01-02\n  - { kind: rats }\n',
        set('hazards.0.checked-on', '2026-02-03'),
        set('hazards.1.checked-on', '2026-02-03'),
      ),
    ).toBe(
      'hazards:\n  - kind: trip\n    found-on: 2026-01-02\n    checked-on: 2026-02-03\n  - { kind: rats, checked-on: 2026-02-03 }\n',
    );
  });
});

describe('adding a field', () => {
  it('puts it behind the field that usually comes before it, past that field’s comment', () => {
    expect(
      edit('peg: "1"\nstatus: open # ok\n# the board\nplatform: { kind: timber }\n', set('status-since', '2026-11-12')),
    ).toBe('peg: "1"\nstatus: open # ok\nstatus-since: 2026-11-12\n# the board\nplatform: { kind: timber }\n');
  });

  it('makes a map that is missing, and goes on in it', () => {
    expect(edit('peg: "1"\n', set('clearance.clear-width', '4 m'), set('clearance.measured-on', '2026-10-02'))).toBe(
      'peg: "1"\nclearance: { clear-width: 4 m, measured-on: 2026-10-02 }\n',
    );
  });

  it('puts it in the usual place of a map in block form', () => {
    expect(
      edit('clearance:\n    clear-width: 4 m\n    measured-on: 2026-10-02\nx: 1\n', set('clearance.path-width', '1 m')),
    ).toBe('clearance:\n    clear-width: 4 m\n    path-width: 1 m\n    measured-on: 2026-10-02\nx: 1\n');
  });

  it('gives it a line where the braces stand on lines of their own', () => {
    const braces = 'platform:\n  {\n    kind: timber,\n    width: 1.8 m, # wide\n  }\n';
    expect(edit(braces, set('platform.condition', 'sound'))).toBe(
      'platform:\n  {\n    kind: timber,\n    width: 1.8 m, # wide\n    condition: sound,\n  }\n',
    );
    expect(edit(braces.replace('m, #', 'm #'), set('platform.condition', 'sound'))).toBe(
      'platform:\n  {\n    kind: timber,\n    width: 1.8 m, # wide\n    condition: sound\n  }\n',
    );
  });

  it('fills empty braces and follows a trailing comma', () => {
    expect(edit('a: {}\nb: { x: 1, }\nc: { }\n', set('a.k', 1), set('b.k', 2), set('c.k', 3))).toBe(
      'a: { k: 1 }\nb: { x: 1, k: 2 }\nc: { k: 3 }\n',
    );
  });

  it('puts a first key before the others', () => {
    expect(edit('where: here\nfacing: 40\n', set('peg', '7'))).toBe('peg: "7"\nwhere: here\nfacing: 40\n');
  });
});

describe('adding to a list', () => {
  const item = { kind: 'trip', place: 'second step', 'found-on': '2026-11-12' };

  it('follows the way the list is written', () => {
    expect(edit('hazards:\n- kind: rats\n  place: all # yes\n# end\nx: 1\n', append('hazards', item))).toBe(
      'hazards:\n- kind: rats\n  place: all # yes\n- kind: trip\n  place: second step\n  found-on: 2026-11-12\n# end\nx: 1\n',
    );
    expect(edit('hazards:\n  -   kind: rats\n      place: all\n', append('hazards', item))).toBe(
      'hazards:\n  -   kind: rats\n      place: all\n  -   kind: trip\n      place: second step\n      found-on: 2026-11-12\n',
    );
    expect(edit('hazards:\n  - { kind: rats }\n', append('hazards', item))).toBe(
      'hazards:\n  - { kind: rats }\n  - { kind: trip, place: second step, found-on: 2026-11-12 }\n',
    );
    expect(edit('hazards: [{ kind: rats }]\n', append('hazards', item))).toBe(
      'hazards: [{ kind: rats }, { kind: trip, place: second step, found-on: 2026-11-12 }]\n',
    );
  });

  it('makes the list where there is none, with dashes set in as elsewhere in the record', () => {
    const lines = 'hazards:\n  - kind: trip\n    place: second step\n    found-on: 2026-11-12\n';
    expect(edit('peg: "1"\nphotos:\n  - { file: a.jpg }\n', append('hazards', item))).toBe(
      `peg: "1"\n${lines}photos:\n  - { file: a.jpg }\n`,
    );
    expect(edit('hazards: [] # none\nx: 1\n', append('hazards', item))).toBe(
      lines.replace(':', ': # none').concat('x: 1\n'),
    );
    expect(edit('hazards: # none\nx: 1\n', append('hazards', item))).toBe(
      lines.replace(':', ': # none').concat('x: 1\n'),
    );
    expect(edit('reach:\n- { what: island }\n', append('hazards', item))).toContain(
      '\nhazards:\n- kind: trip\n  place',
    );
  });

  it('works in a record that is one pair of braces', () => {
    expect(edit('{ peg: "1" }\n', append('hazards', { kind: 'trip' }), append('hazards', { kind: 'rats' }))).toBe(
      '{ peg: "1", hazards: [{ kind: trip }, { kind: rats }] }\n',
    );
  });
});

describe('taking a field out', () => {
  it('takes its line and no more', () => {
    expect(edit('status: closed\nstatus-reason: flood # high\n# c\nx: 1\n', remove('status-reason'))).toBe(
      'status: closed\n# c\nx: 1\n',
    );
    expect(edit('a: { x: 1, y: 2, z: 3 }\n', remove('a.y'), remove('a.z'))).toBe('a: { x: 1 }\n');
    expect(edit('a: 1\n', remove('b'), remove('c.d'))).toBe('a: 1\n');
  });
});

describe('what it refuses', () => {
  it.each([
    ['a value shared with another field', '---\na: &x open\nb: *x\n---\n', set('a', 'closed'), 'shares values'],
    ['a doubled key', '---\na: 1\na: 2\n---\n', set('a', 3), 'not valid YAML'],
    ['a record without front matter', 'words\n', set('a', 3), 'does not begin with'],
    ['front matter without an end', '---\na: 1\n', set('a', 3), 'no line of ---'],
    ['a list where a value is expected', '---\na: [1]\n---\n', set('a', 3), 'more than one value'],
    ['a value where a list is expected', '---\na: 1\n---\n', append('a', { k: 1 }), 'is no list'],
  ])('refuses %s', (_, text, change, message) => {
    expect(() => editFrontMatter(text, [change])).toThrow(CannotEdit);
    expect(() => editFrontMatter(text, [change])).toThrow(message);
  });
});

it('keeps carriage returns and a byte order mark', () => {
  const text = '\uFEFF---\r\npeg: "1"\r\nstatus: open\r\n---\r\n# Notes\r\n---\r\n';
  const changed = editFrontMatter(text, [
    set('status', 'closed'),
    set('status-reason', 'flood'),
    append('hazards', { kind: 'trip', place: 'x' }),
  ]);
  expect(changed).toBe(
    '\uFEFF---\r\npeg: "1"\r\nstatus: closed\r\nstatus-reason: flood\r\nhazards:\r\n  - kind: trip\r\n    place: x\r\n---\r\n# Notes\r\n---\r\n',
  );
});

it('leaves a number as it is written where it is set to the same', () => {
  expect(edit('place: 012\nfacing: 40.0\n', set('place', '012'), set('facing', '40.0'))).toBe(
    'place: 012\nfacing: 40.0\n',
  );
});

it('reads a record whose lines end in a carriage return alone, and refuses to change it', () => {
  const text = '---\rplace: 012\rfacing: 40.0\r---\rWords.\r';
  expect(frontMatterTexts(text)).toEqual({ place: '012', facing: '40.0' });
  expect(() => editFrontMatter(text, [set('place', 'x')])).toThrow('a carriage return alone');
});
