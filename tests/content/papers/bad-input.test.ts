import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { readDrawing } from '../../../src/content/papers/places/read-drawing.ts';
import { readPaper } from '../../../src/content/papers/read-paper.ts';
import { workbook } from './result-papers.ts';

const HEAD = ['Peg', 'Name', 'Weight'];

/** An archive whose one file unpacks to more than anybody's sheet: zeros, which pack to next to nothing. */
const bomb = (name: string): Uint8Array => zipSync({ [name]: [new Uint8Array(101 * 1024 * 1024), { level: 9 }] });

describe('a workbook from elsewhere', () => {
  test('that unpacks without end is refused in words, and is never unpacked', () => {
    const packed = bomb('xl/workbook.xml');
    expect(packed.length).toBeLessThan(1024 * 1024);
    expect(readPaper('bomb.xlsx', packed)).toMatchObject({
      ok: false,
      fault: { found: 'a workbook that is damaged or unpacks to more than 100 MB' },
    });
    expect(() => readDrawing('bomb.kmz', bomb('doc.kml'))).toThrow('is damaged, or unpacks to more than 100 MB');
  });

  test('with two thousand files in it is refused', () => {
    const many = Object.fromEntries(Array.from({ length: 2001 }, (_, index) => [`f${index}`, new Uint8Array(1)]));
    expect(readPaper('many.xlsx', zipSync(many))).toMatchObject({ ok: false });
  });

  test('that says of a file that it is small, and it is not, is cut off there', () => {
    const packed = bomb('xl/workbook.xml');
    // The size a file claims stands 22 bytes into its entry and 24 into its line of the list (APPNOTE.TXT 4.3.7, 4.3.12).
    const view = new DataView(packed.buffer, packed.byteOffset);
    for (let at = 0; at < packed.length - 4; at++) {
      const mark = view.getUint32(at, true);
      if (mark === 0x04034b50) view.setUint32(at + 22, 1000, true);
      if (mark === 0x02014b50) view.setUint32(at + 24, 1000, true);
    }
    expect(readPaper('liar.xlsx', packed)).toMatchObject({ ok: false });
  });

  test('with links to other workbooks is read as last worked out, and how many is told', () => {
    const linked = workbook({ Sheet1: [['Kiln Pool 2/8/2026'], HEAD, [1, 'Ada Quill', '3-04']] }, ({ Sheet1 }) => {
      Sheet1!.C3 = { t: 's', v: '3-04', f: '[1]Scales!B2' };
    });
    const read = readPaper('linked.xlsx', linked);
    expect(read).toMatchObject({
      ok: true,
      paper: {
        remarks: ['linked.xlsx: 1 cell with a value from another workbook: the value last worked out was read'],
      },
    });
    expect(read.ok && read.paper.sheets[0]!.rows[2]!.map(({ text }) => text)).toEqual(['1', 'Ada Quill', '3-04']);
  });

  test('that is locked, cut off or none at all is refused in words', () => {
    const whole = workbook({ Sheet1: [HEAD] });
    const locked = new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0, 0, 0]);
    for (const bytes of [whole.subarray(0, 60), whole.subarray(0, whole.length - 30), locked]) {
      const read = readPaper('x.xlsx', bytes);
      expect([read.ok, read.ok ? '' : read.fault.mend]).toEqual([false, expect.stringMatching(/[Ss]ave/)]);
    }
  });
});

describe('text from elsewhere', () => {
  test.each([
    ['UTF-16 with its mark', Buffer.from('\ufeffPeg\tName\tWeight\n1\tZoë Larch\t3-04\n', 'utf16le')],
    ['UTF-8 with its mark', Buffer.from('\ufeffPeg;Name;Weight\n1;Zoë Larch;3-04\n', 'utf8')],
    ['an old code page', Buffer.from('Peg;Name;Weight\n1;Zo\xeb Larch;3-04\n', 'latin1')],
  ])('in %s is read letter by letter', (_, bytes) => {
    const read = readPaper('x.csv', new Uint8Array(bytes));
    expect(read.ok && read.paper.sheets[0]!.rows[1]!.map(({ text }) => text)).toEqual(['1', 'Zoë Larch', '3-04']);
  });
});
