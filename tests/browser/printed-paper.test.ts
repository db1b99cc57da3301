import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { PegDatum } from '../../src/atlas/peg-data.ts';
import { run as cards } from '../../src/commands/cards.ts';
import { EXIT } from '../../src/commands/command-io.ts';
import { run as plates } from '../../src/commands/plates.ts';
import { recordedIo } from '../commands/recorded-io.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'printed-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const given = (name: string) => ['--out', inject('siteFolder'), '--to', join(folder, name)];
const world = () => recordedIo(process.env.CHROMIUM === undefined ? {} : { CHROMIUM: process.env.CHROMIUM });

/** What a PDF says of itself outside its compressed streams (ISO 32000-1: 7.7.2 catalogue, 12.3.3 outline, 14.7 structure). */
function ofPdf(file: string) {
  const pdf = readFileSync(file).toString('latin1');
  const [, outline = ''] = /\/Type \/Outlines[\s\S]*?\/Count (\d+)/.exec(pdf) ?? [];
  return {
    pages: pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0,
    isTagged: /\/MarkInfo\s*<<[^>]*\/Marked\s+true/.test(pdf) && pdf.includes('/StructTreeRoot'),
    outline: Number(outline),
  };
}

describe.each([
  ['cards', cards, 2],
  ['plates', plates, 1],
] as const)('venue %s', (kind, run, toASide) => {
  it('writes a tagged PDF a water, with every peg in its outline', async () => {
    const io = world();
    expect([await run(given(kind), io), io.errors]).toEqual([EXIT.clean, []]);
    const { pegs } = JSON.parse(readFileSync(join(inject('siteFolder'), 'data/pegs.json'), 'utf8')) as {
      readonly pegs: readonly PegDatum[];
    };
    const waters = [...new Set(pegs.map(({ water }) => water))].sort();
    expect(readdirSync(join(folder, kind)).sort()).toEqual(waters.map((water) => `${kind}-${water}.pdf`));
    for (const water of waters) {
      const count = pegs.filter((peg) => peg.water === water).length;
      expect(ofPdf(join(folder, kind, `${kind}-${water}.pdf`))).toEqual({
        pages: Math.ceil(count / toASide),
        isTagged: true,
        outline: count,
      });
    }
  });

  it('says in words which waters there are, and that a browser is not where it was said to be', async () => {
    await expect(run(['nowhere', ...given('none')], world())).rejects.toThrow('expected one of eelback');
    const io = world();
    expect(await run(['--browser', join(folder, 'no-browser'), ...given('none')], io)).toBe(EXIT.faults);
    expect(io.errors.join('\n')).toContain('There is no browser at');
    expect(readdirSync(folder)).not.toContain('none');
  });
});
