import { expect, test } from 'vitest';
import { withPlan } from '../../src/content/write-plan.ts';
import { CannotEdit } from '../../src/content/yaml-edit/yaml-place.ts';

const PLAN = [
  { name: 'A', pegs: ['pit/1', 'pit/2'] },
  { name: 'B', pegs: ['pit/4', 'pit/5'] },
];
const TEXT = '---\nname: Winter # the third\nentries: 4\n# as the club decided\nstatus: planned\n---\n\nBring boots.\n';

test('puts a plan behind the other fields and changes no other byte', () => {
  expect(withPlan(TEXT, PLAN, ['pit/2'])).toBe(
    '---\nname: Winter # the third\nentries: 4\n# as the club decided\nstatus: planned\npegs:\n  A: [pit/1, pit/2]\n  B: [pit/4, pit/5]\nkept: [pit/2]\n---\n\nBring boots.\n',
  );
});

test('replaces a plan where it stands, comments of its neighbours kept', () => {
  const before = TEXT.replace(
    '# as the club',
    'pegs:\n  A: [pit/9]\n  C: [pit/8] # gone\nkept: [pit/9]\n\n# as the club',
  );
  expect(withPlan(before, PLAN, [])).toBe(
    '---\nname: Winter # the third\nentries: 4\npegs:\n  A: [pit/1, pit/2]\n  B: [pit/4, pit/5]\n\n# as the club decided\nstatus: planned\n---\n\nBring boots.\n',
  );
});

test('is the same when it is written again', () => {
  const once = withPlan(TEXT, PLAN, ['pit/2']);
  expect(withPlan(once, PLAN, ['pit/2'])).toBe(once);
});

test('keeps the line ends of a file from Windows', () => {
  const text = TEXT.replaceAll('\n', '\r\n');
  expect(withPlan(text, PLAN, []).replaceAll('\r\n', '')).not.toContain('\n');
});

test('refuses a text that is no record', () => {
  expect(() => withPlan('pegs: none', PLAN, [])).toThrow(CannotEdit);
  expect(() => withPlan('---\n{ a: 1 }\n---\n', PLAN, [])).toThrow(CannotEdit);
});
