import type { PegPlaces, PlaceMark } from '../../atlas/peg-places.ts';
import { verdictOnDays } from '../../domain/peg-verdict.ts';
import { make } from '../make.ts';
import { readDays } from '../read-days.ts';
import { unitsOfReader } from '../units/chosen-units.ts';
import { askFix } from './ask-fix.ts';
import { type PlacedPeg, whereWords } from './where-words.ts';

/** Says beside the button where the reader is: the position to read out, and the peg or pegs it may be. */
export async function sayWhere(place: HTMLElement, button: HTMLElement): Promise<void> {
  const said = place.querySelector<HTMLElement>('.where-said') ?? made(place, button);
  const words = said.querySelector('span')!;
  said.hidden = false;
  words.textContent = 'Asking the phone …';
  const [fix, pegs] = await Promise.all([askFix(), placedPegs()]);
  words.textContent = typeof fix === 'string' ? fix : whereWords(fix, pegs, unitsOfReader()).said;
}

function made(place: HTMLElement, button: HTMLElement): HTMLElement {
  const words = make('span');
  words.setAttribute('role', 'status');
  const close = make('button', { type: 'button' }, 'Close');
  const said = make('p', { className: 'where-said screen-only' }, words, ' ', close);
  close.addEventListener('click', () => {
    said.hidden = true;
    button.focus();
  });
  place.append(said);
  return said;
}

/** The pegs of all waters; none where the list is not on this phone: the position is told all the same. */
async function placedPegs(): Promise<readonly PlacedPeg[]> {
  try {
    const answer = await fetch(`${document.body.dataset.guideBase ?? '/'}data/where.json`);
    const places = answer.ok ? ((await answer.json()) as PegPlaces) : [];
    return places.flatMap(({ water, pegs }) =>
      pegs.map(([peg, lat, lng, throwLine, mark]) => ({
        peg,
        throwLine,
        of: places.length > 1 ? ` of ${water}` : '',
        at: { lat, lng },
        closed: mark !== undefined && isClosed(mark),
      })),
    );
  } catch {
    return [];
  }
}

function isClosed({ closed, dated }: PlaceMark): boolean {
  return dated === undefined ? closed : verdictOnDays(JSON.parse(dated), readDays()).state === 'closed';
}
