import { openDraw } from '../../match-day/bag-draw.ts';
import type { Entry } from '../../match-day/entries.ts';
import { agreedValue } from '../../match-day/match-log.ts';
import { type DrawPromise, drawnPegs, promiseDigest, promiseText, saltText } from '../../match-day/phone-draw.ts';
import { ABOUT } from '../../match-day/scales.ts';
import { button, make } from '../make.ts';
import { addForm, entryRow, FREE_PEGS, withdrawnView } from './entries-view.ts';
import { keptInput } from './kept-input.ts';
import type { MatchDay } from './match-day.ts';

/** A draw by the phone: promised, and once the salt is known, drawn. */
interface PhoneDraw extends DrawPromise {
  readonly digest: string;
  readonly salt?: string;
  readonly entries: readonly string[];
}

/** Who is here, and which peg each has: pulled from the bag and typed, or drawn by this phone so that anybody can check it. */
export function drawView(day: MatchDay): HTMLElement {
  const fishable = day.pegs.filter(({ closed }) => closed === '');
  const bag = fishable.filter(({ isKept }) => !isKept).map(({ key }) => key);
  const { entries } = day;
  const held = new Map(entries.flatMap(({ id, peg }) => (peg === null ? [] : [[id, peg] as const])));
  const open = openDraw(
    fishable.map(({ key }) => key),
    entries.map(({ id }) => id),
    held,
  );
  return make(
    'div',
    {},
    addForm(day),
    make('datalist', { id: FREE_PEGS }, ...open.pegs.map((key) => make('option', { value: day.nameOf(key) }))),
    make('ol', { className: 'entries' }, ...entries.map((entry) => entryRow(day, entry, held))),
    make(
      'p',
      { className: 'soft' },
      `${entries.length} entered, ${open.entries.length} without a peg; ${open.pegs.length} of ${fishable.length} pegs not taken.${entries.length > fishable.length ? ' There are more entries than pegs: plan more pegs, or turn somebody away.' : ''}`,
    ),
    ...(entries.length > 0 && open.pegs.length > 0 && open.pegs.length < fishable.length
      ? [make('p', { className: 'soft' }, `Not taken: ${open.pegs.map((key) => day.nameOf(key)).join(', ')}.`)]
      : []),
    ...withdrawnView(day),
    phoneDraw(day, bag, entries),
  );
}

function phoneDraw(day: MatchDay, bag: readonly string[], entries: readonly Entry[]): HTMLElement {
  const draw = readDraw(agreedValue(day.standing, ABOUT.draw));
  const body =
    draw === null
      ? promiseForm(day, bag, entries)
      : draw.salt === undefined
        ? saltForm(day, draw)
        : drawnView(day, draw, entries);
  return make(
    'details',
    { className: 'phone-draw', open: draw !== null },
    make('summary', {}, 'Draw by this phone'),
    ...body,
  );
}

function readDraw(value: unknown): PhoneDraw | null {
  if (typeof value !== 'object' || value === null) return null;
  const { match, pegs, seed, digest, entries } = value as Partial<PhoneDraw>;
  const isWhole =
    typeof match === 'string' &&
    typeof seed === 'string' &&
    typeof digest === 'string' &&
    Array.isArray(pegs) &&
    Array.isArray(entries);
  return isWhole ? (value as PhoneDraw) : null;
}

function promiseForm(day: MatchDay, bag: readonly string[], entries: readonly Entry[]): HTMLElement[] {
  const waiting = entries.filter(({ peg }) => peg === null);
  const taken = new Set(entries.flatMap(({ peg }) => peg ?? []));
  const pegs = bag.filter((key) => !taken.has(key));
  if (waiting.length === 0 || waiting.length > pegs.length) {
    return [
      make(
        'p',
        {},
        waiting.length === 0
          ? entries.length === 0
            ? 'Enter who has come first.'
            : 'Everybody who has entered has a peg.'
          : `${waiting.length} wait for a peg and the bag holds ${pegs.length}.`,
      ),
    ];
  }
  return [
    make(
      'p',
      {},
      `Each of the ${waiting.length} who have no peg yet, in the order of the list, gets one of the ${pegs.length} left in the bag. The phone first makes a secret number and shows its digest; read its first figures out. Then somebody else says a word: only both together make the draw.`,
    ),
    button(
      'Make the secret number',
      () => {
        const seed = [...crypto.getRandomValues(new Uint8Array(32))]
          .map((byte) => byte.toString(16).padStart(2, '0'))
          .join('');
        const promise = { match: day.data.match, pegs, seed };
        void promiseDigest(promise).then((digest) =>
          day.note(ABOUT.draw, { ...promise, digest, entries: waiting.map(({ id }) => id) }),
        );
      },
      true,
    ),
  ];
}

function saltForm(day: MatchDay, draw: PhoneDraw): HTMLElement[] {
  const salt = keptInput(day, 'salt', { maxLength: 100, name: 'salt' });
  const form = make(
    'form',
    {},
    make('p', {}, 'The digest, for all to see before the word is said:'),
    make('p', { className: 'digest' }, draw.digest),
    make('label', { className: 'field' }, 'The word that somebody else says, or the dice they roll', salt),
    make('button', { type: 'submit', className: 'wide-button main' }, 'Draw'),
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    if (saltText(salt.value) === '') return;
    void drawOut(day, draw, saltText(salt.value));
  });
  return [form];
}

async function drawOut(day: MatchDay, draw: PhoneDraw, salt: string): Promise<void> {
  const order = await drawnPegs(draw, salt);
  await day.noteAll(
    [...draw.entries.map((id, i) => [ABOUT.holds(id), order[i] ?? null] as const), [ABOUT.draw, { ...draw, salt }]],
    ['salt'],
  );
}

function drawnView(day: MatchDay, draw: PhoneDraw, entries: readonly Entry[]): HTMLElement[] {
  return [
    make(
      'p',
      {},
      `Drawn with the word “${draw.salt}”. Anybody can check it: the SHA-256 of the text below is the digest that was shown.`,
    ),
    make('p', { className: 'digest' }, draw.digest),
    make('pre', {}, promiseText(draw)),
    make(
      'p',
      { className: 'soft' },
      'Then that text, a line feed and the word give the numbers: the 32-bit words of the SHA-256 of it with a line feed and 0, 1, 2 … behind. From the last peg to the second, each changes places with the one at the next number, its remainder by the places up to its own; words beyond the last whole multiple are passed over.',
    ),
    // Another draw takes the place of the one that anybody can check: only where somebody waits for it.
    ...(entries.some(({ peg }) => peg === null)
      ? [button('Draw again for who has none', () => void day.note(ABOUT.draw, null))]
      : []),
  ];
}
