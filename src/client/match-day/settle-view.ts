import { conflictsOf, type Note } from '../../match-day/match-log.ts';
import { ABOUT, bothNets, historyOf, movedPeg, onScales } from '../../match-day/scales.ts';
import { button, make } from '../make.ts';
import type { MatchDay } from './match-day.ts';
import { noteHead, scalesWords } from './said-words.ts';

/** Everything of which two phones say different things, each with what they say: a person chooses, no clock does. */
export function settleView(day: MatchDay): HTMLElement {
  return make(
    'div',
    {},
    ...conflictsOf(day.standing).map(({ about, notes }) =>
      make(
        'section',
        { className: 'notice settle' },
        make('h2', {}, `${aboutWords(day, about)}: two phones differ. Which is right?`),
        ...notes.map((note) => button(changeWords(day, note), () => void day.note(about, note.value), true)),
        ...togetherKey(day, about, notes),
      ),
    ),
  );
}

/** Where each phone weighed nets of its own, neither is right alone. */
function togetherKey(day: MatchDay, about: string, notes: readonly Note[]): HTMLElement[] {
  const both = about.startsWith(ABOUT.scales('')) ? bothNets(notes.map(({ value }) => onScales(value))) : null;
  if (both === null) return [];
  return [button(`Both: ${scalesWords(day, both)}`, () => void day.note(about, both))];
}

/** What was noted more than once, each time with its phone and its clock: for who disputes a weight or a peg. */
export function changesView(day: MatchDay): HTMLElement {
  const changed = [...Map.groupBy(day.notes, ({ about }) => about)].filter(([, notes]) => notes.length > 1);
  if (changed.length === 0) return make('p', { className: 'soft' }, 'Nothing was changed after it was noted.');
  return make(
    'details',
    {},
    make('summary', {}, `What was changed: ${changed.length}`),
    ...changed.flatMap(([about, notes]) => [
      make('h3', {}, aboutWords(day, about)),
      make(
        'ol',
        { className: 'history' },
        ...historyOf(notes, about).map((note) => make('li', {}, changeWords(day, note))),
      ),
    ]),
  );
}

/** "Peg 9", "Peg of Pat Example". */
function aboutWords(day: MatchDay, about: string): string {
  const [kind = '', ...rest] = about.split(' ');
  const of = rest.join(' ');
  const name = day.nameOfEntry(of);
  if (kind === 'scales') return `Peg ${day.nameOf(of)}`;
  if (kind === 'moved') return `Where the angler of peg ${day.nameOf(of)} sits`;
  if (kind === 'holds') return `Peg of ${name}`;
  return kind === 'entry' ? `Entry of ${name}` : 'Draw by the phone';
}

function changeWords(day: MatchDay, note: Note): string {
  return `${noteHead(day, note)}: ${valueWords(day, note)}`;
}

function valueWords(day: MatchDay, { about, value }: Note): string {
  if (about.startsWith(ABOUT.scales(''))) {
    const said = onScales(value);
    return said === null ? 'taken back' : scalesWords(day, said);
  }
  if (about.startsWith(ABOUT.moved(''))) {
    const moved = movedPeg(value);
    return moved === null ? 'on this peg' : `on ${day.nameOf(moved.to)}${moved.why === '' ? '' : `, ${moved.why}`}`;
  }
  if (about.startsWith(ABOUT.holds(''))) return typeof value === 'string' ? day.nameOf(value) : 'none';
  if (about.startsWith(ABOUT.entry(''))) return value === null ? 'withdrew' : 'entered';
  const { digest, salt } = (value ?? {}) as { readonly digest?: unknown; readonly salt?: unknown };
  if (typeof digest !== 'string') return 'begun again';
  return `${digest.slice(0, 8)}…, ${typeof salt === 'string' ? `drawn with “${salt}”` : 'promised'}`;
}
