import type { Note } from '../../match-day/match-log.ts';
import type { ResultRow } from '../../match-day/match-results.ts';
import { historyOf, type Net, type OnScales, onScales, totalGrams } from '../../match-day/scales.ts';
import { STATUS_WORDS } from '../../match-day/weighed-in.ts';
import { localDay } from '../local-day.ts';
import { button, make } from '../make.ts';
import { clockTime } from '../round/elements.ts';
import type { MatchDay } from './match-day.ts';
import { weightWords } from './weights.ts';

/** What the scales said of a peg, and its place in the section as far as it has been weighed. */
export function stateWords(day: MatchDay, said: OnScales | null, result: ResultRow | undefined): string {
  if (said === null) return '';
  const what =
    said.status === 'weighed' ? weightWords(totalGrams(said), day.data.weightUnit) : STATUS_WORDS[said.status].name;
  const place = result?.sectionPlace;
  return place == null || said.status !== 'weighed' ? what : `${what} · ${ordinal(place)}`;
}

/** "12 lb 4 oz, silvers". */
export function netWords(day: MatchDay, { grams, part }: Net): string {
  const name = day.data.parts.find(({ id }) => id === part)?.name ?? part;
  return `${weightWords(grams, day.data.weightUnit)}${name === null ? '' : `, ${name.toLowerCase()}`}`;
}

/** All that the scales said of a peg: "12 lb 4 oz (8 lb, carp + 4 lb 4 oz, silvers); 14 carp". */
export function scalesWords(day: MatchDay, said: OnScales): string {
  const nets = said.nets.length > 1 || said.nets.some(({ part }) => part !== null);
  const fish = Object.entries(said.fish).map(
    ([part, count]) => `${count} ${day.data.parts.find(({ id }) => id === part)?.name.toLowerCase() ?? part}`,
  );
  return [
    stateWords(day, said, undefined),
    ...(nets ? [` (${said.nets.map((net) => netWords(day, net)).join(' + ')})`] : []),
    ...(fish.length > 0 ? [`; ${fish.join(', ')}`] : []),
  ].join('');
}

/** When a note was made, by the clock of the phone that made it, and which phone that was. */
export function noteHead(day: MatchDay, { id, at }: Note): string {
  const phone = id.slice(0, id.indexOf('.'));
  const when = new Date(at);
  const onDay = Number.isNaN(when.getTime()) ? '' : localDay(when);
  const time = onDay === '' ? 'at no known time' : clockTime(when);
  return `${onDay === day.data.day || onDay === '' ? '' : `${onDay} `}${time}, ${phone === day.phone ? 'this phone' : `phone ${phone}`}`;
}

/** All that was noted of a peg's weight, once there is more than one note of it. */
export function historyView(day: MatchDay, about: string): HTMLElement {
  const notes = historyOf(day.notes, about);
  if (notes.length < 2) return make('div');
  const words = (note: Note) => {
    const said = onScales(note.value);
    return `${noteHead(day, note)}: ${said === null ? 'taken back' : scalesWords(day, said)}`;
  };
  return make(
    'details',
    {},
    make('summary', {}, `${notes.length} changes`),
    make(
      'ol',
      { className: 'history' },
      ...notes.map((note) => {
        const stands = (day.standing.get(about) ?? []).some(({ id }) => id === note.id);
        const putBack = button('Put back', () => void day.note(about, note.value));
        return make('li', {}, make('span', {}, words(note)), ...(stands ? [' (stands)'] : [putBack]));
      }),
    ),
  );
}

/** 1st, 2nd, 3rd, 11th. */
function ordinal(place: number): string {
  const ten = place % 100 >= 11 && place % 100 <= 13;
  return `${place}${ten ? 'th' : (['th', 'st', 'nd', 'rd'][place % 10] ?? 'th')}`;
}
