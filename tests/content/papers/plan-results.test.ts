import { expect, test } from 'vitest';
import { StagedFiles } from '../../../src/content/intake/staged-files.ts';
import { Asker } from '../../../src/content/papers/questions.ts';
import { readPaper } from '../../../src/content/papers/read-paper.ts';
import { planResults } from '../../../src/content/papers/results/plan-results.ts';
import { readResults } from '../../../src/content/papers/results/read-results.ts';
import { kept } from './result-papers.ts';

const VENUE = {
  waters: [{ id: 'kiln-pool', name: 'Kiln Pool', pegs: new Set(['1', '2', '3', '4']) }],
  bagParts: [],
  usualHours: new Map(),
};
const EVENTS = 'sessions/2026/events.csv';
const SESSIONS = 'sessions/2026/sessions.csv';

/** Takes a paper of a match of these rows into the files, as `import` does. */
function takenIn(files: StagedFiles, ...rows: readonly string[]) {
  const text = `Kiln Pool 2026-07-05\nPeg,Name,Weight\n${rows.join('\n')}\n`;
  const paper = readPaper('rows.csv', new TextEncoder().encode(text));
  if (!paper.ok) throw new Error(paper.fault.found);
  const asker = new Asker(kept({ listing: 'full', places: '1', hours: '5' }));
  const { matches } = readResults(paper.paper, VENUE, asker);
  const [change] = planResults(matches, [], () => undefined, files);
  const [head, ...lines] = files.text(EVENTS)!.trim().split('\n');
  const cells = lines[0]!.split(',');
  const event = Object.fromEntries(head!.split(',').map((column, i) => [column, cells[i] ?? '']));
  return { change, lines, listing: event.listing, fished: event.fished };
}

function folderOf(texts: Readonly<Record<string, string>>): StagedFiles {
  const text = (path: string): string | null => texts[path] ?? null;
  return new StagedFiles({
    text,
    bytes: (path) => (texts[path] === undefined ? null : new TextEncoder().encode(texts[path])),
    rounds: [],
    pegsOf: () => [],
  });
}

test('a paper that was mended lists everybody, and how many fished is no longer said beside its rows', () => {
  const files = folderOf({});
  const whole = ['1,Ada Quill,3-00', '3,Di Teal,2-00', '4,Ed Rush,1-00'];
  // A row that cannot be read: the log lists two of the three who fished.
  expect(takenIn(files, '1,Ada Quill,3-00', '3,Di Teal,2-00', '4,Ed Rush,1-0x')).toMatchObject({
    change: { kind: 'new', sessions: 2 },
    listing: 'frame',
    fished: '3',
  });
  const mended = takenIn(files, ...whole);
  expect(mended).toMatchObject({ change: { kind: 'corrected', sessions: 3 }, listing: 'full', fished: '' });
  expect(mended.lines).toHaveLength(1);
  expect(mended.change!.differences.join('\n')).toMatch(/fished/);
  expect(takenIn(files, ...whole)).toMatchObject({ change: { kind: 'same' }, listing: 'full', fished: '' });
  // Somebody more on the bank than was read before is no more than the event says: nothing of the old count stands in the way.
  expect(takenIn(files, ...whole, '2,Jo Fern,0-08')).toMatchObject({ change: { sessions: 4 }, fished: '' });
});

test('a count that was typed beside a match of everybody stays when a weight of it is corrected', () => {
  const files = folderOf({
    [EVENTS]:
      'event,date,water,kind,hours,listing,frame_places,fished\n2026-07-05-kiln-pool,2026-07-05,kiln-pool,match,5,full,1,2\n',
    [SESSIONS]:
      'event,section,peg,angler,status,weight\n2026-07-05-kiln-pool,,1,,weighed,3-00\n2026-07-05-kiln-pool,,3,,weighed,2-00\n',
  });
  expect(takenIn(files, '1,Ada Quill,3-08', '3,Di Teal,2-00')).toMatchObject({
    change: { kind: 'corrected', sessions: 2 },
    listing: 'full',
    fished: '2',
  });
});
