import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { RoundGone, StorageFull } from '../../../src/client/round/round-store.ts';
import { SaveLine } from '../../../src/client/round/save-line.ts';

const said = { textContent: '', classList: { toggle: () => false } } as unknown as HTMLElement;
let isThere = true;
let gone = 0;
let line: SaveLine;

beforeEach(() => {
  vi.stubGlobal('addEventListener', () => undefined);
  isThere = true;
  gone = 0;
  line = new SaveLine(
    said,
    async () => isThere,
    () => {
      gone++;
    },
  );
});
afterEach(() => {
  vi.unstubAllGlobals();
});

describe('the line that says what is saved', () => {
  it('saves on after it was asked to try again with nothing waiting', async () => {
    await line.retry();
    let written = '';
    await line.save('peg 1', async () => {
      written = 'note';
    });
    expect([written, line.isSaved]).toEqual(['note', true]);
    expect(said.textContent).toMatch(/^Saved on this phone/);
  });

  it('lets one photo that does not fit keep no later note from being saved, and names it', async () => {
    const written: string[] = [];
    await line.save('a photo of 4', () => Promise.reject(new StorageFull()));
    await line.save('peg 5', async () => {
      written.push('peg 5');
    });
    await line.save('peg 6', async () => {
      written.push('peg 6');
    });
    expect(written).toEqual(['peg 5', 'peg 6']);
    expect(said.textContent).toMatch(/^NOT saved: a photo of 4\. The phone is full.*saved before is still here/);
    expect(line.isSaved).toBe(false);
  });

  it('never says that what was saved is still here where the store was cleared', async () => {
    isThere = false;
    await line.save('peg 1', () => Promise.reject(new Error('broken')));
    expect(said.textContent).toMatch(/no longer on this phone/);
    await line.save('peg 1', () => Promise.reject(new RoundGone()));
    expect(said.textContent).not.toMatch(/still here/);
    expect(gone).toBe(2);
  });
});
