import { describe, expect, it } from 'vitest';
import { FED_CELL, fedCell } from '../../src/domain/fed.ts';

describe('what was fed, as the log writes it', () => {
  it('stands in order of time, hours and minutes after the all in, what went in before at nought', () => {
    const cell = fedCell([
      { minute: 90.7, what: 'pellet, margin' },
      { minute: -4, what: 'groundbait' },
      { minute: 5, what: ' hemp ' },
    ]);
    expect(cell).toBe('0:00 groundbait; 0:05 hemp; 1:30 pellet, margin');
    expect(FED_CELL.test(cell)).toBe(true);
    expect(fedCell([])).toBe('');
  });

  it('lets no word part two feeds or hide in the cell, and leaves out what says nothing', () => {
    const cell = fedCell([
      { minute: 5, what: 'hemp; 9:99 gold\u202e\u0007' },
      { minute: 6, what: ' ;; ' },
    ]);
    expect(cell).toBe('0:05 hemp 9:99 gold');
    expect(FED_CELL.test(cell)).toBe(true);
  });

  it.each(['hemp', '0:61 hemp', '0:05', '0:05 hemp;1:30 pellet', '0:05 hemp; '])('is not %s', (cell) => {
    expect(FED_CELL.test(cell)).toBe(false);
  });
});
