import { monthName } from '../domain/day.ts';
import type { BesideSilence } from '../ratings/beside/beside-term.ts';
import type { DnwSilence } from '../ratings/dnw-mechanism.ts';
import type { ForecasterName, LeftOutReason, RatingsNote } from '../ratings/ratings.ts';

/** Why a session does not count, and why that is right where it is asked. */
export const LEFT_OUT_WORDS: Readonly<Record<LeftOutReason, { readonly what: string; readonly note: string }>> = {
  chosen: {
    what: 'peg chosen, not drawn',
    note: 'Who may choose takes the peg they believe in, and good anglers choose well: such a bag says as much of the chooser as of the peg.',
  },
  absent: { what: 'absent', note: 'Nobody fished the peg.' },
  disqualified: { what: 'disqualified', note: 'The weight does not stand.' },
  'draw-unknown': {
    what: 'only the places of the event are listed and its draw is not known',
    note: 'A list of winners without the draw shows only pegs that did well. It still counts for the weight to frame.',
  },
  'no-bound': { what: 'did not weigh, in an event where nobody weighed', note: '' },
  'unlisted-in-full': { what: 'not listed, in an event that lists every weight', note: '' },
  dnw: { what: 'did not weigh (left out here on purpose)', note: '' },
  'part-unknown': { what: 'weight of this bag part not logged', note: '' },
};

/** What forecast the last year. */
export const FORECASTER_WORDS: Readonly<Record<ForecasterName, { readonly name: string; readonly note: string }>> = {
  model: { name: 'This guide', note: 'features by month' },
  'model-by-temperature': { name: 'This guide by thermometer', note: 'features by water temperature' },
  flat: { name: 'Flat guess', note: 'every peg at par' },
  'peg-average': { name: 'Raw peg average', note: 'what the peg averaged before, nothing taken out' },
};

/** Why the log says nothing of a term beside the model. */
export const BESIDE_SILENCE_WORDS: Readonly<Record<BesideSilence, string>> = {
  'same-room': 'every angler had the same room',
  'no-wind-logged': 'no match logs where its wind came from',
  'no-open-water': 'no peg’s open water is mapped',
  'not-plumbed': 'the pegs are not plumbed at 6 m and 13 m',
  'one-colour': 'no two matches log a different colour of the water',
  'no-margin-plumbed': 'the pegs are not plumbed down the edge',
};

/** Why the log taught nothing of its DNWs. */
export function dnwSilenceWords(silence: DnwSilence): string {
  switch (silence.why) {
    case 'none-weighed':
      return 'nobody weighed a bag';
    case 'all-weighed':
      return 'everyone who fished weighed in';
    case 'not-told':
      return 'the log does not tell how low a bag must be not to be weighed';
    case 'few-dnw':
      return `only ${silence.count} DNWs in events that list every weight`;
    case 'few-weighed':
      return `only ${silence.count} weighed bags beside them`;
  }
}

/** What the log cannot tell, as a sentence. */
export function ratingsNoteWords(note: RatingsNote): string {
  switch (note.about) {
    case 'no-session':
      return 'The log holds no session that counts: all worth stands at par and is only a guess.';
    case 'nobody-weighed':
      return 'Nobody weighed a bag: all worth stands at par and is only a guess.';
    case 'one-event':
      return 'All sessions are of one event: what is the peg and what was the luck of that day cannot be told apart.';
    case 'one-angler':
      return 'All sessions are by one angler: worth here is of pegs as that angler fishes them.';
    case 'unsettled-fit':
      return `The fit of ${note.of} stopped short of its best variances after ${note.steps} steps (${note.stopped}): all it tells is shown as thin.`;
    case 'lone-peg':
      return `${note.water} has one peg: it is par itself, and its worth is 1 by definition.`;
    case 'water-without-session':
      return `${note.water} has no session that counts: its pegs’ worth rests on the other waters alone.`;
    case 'feature-everywhere':
      return `Every peg of ${note.water} has the feature “${note.feature}”: it is part of par there, and that water tells nothing of its worth.`;
    case 'features-together':
      return `${listed(note.features.map((name) => `“${name}”`))} stand on the very same pegs: what they are worth rests on the same bags and cannot be told apart.`;
    case 'feature-nowhere':
      return `No peg has the feature “${note.feature}”: it has no worth.`;
    case 'months-never-fished':
      return `${note.water} was never fished in ${listed(note.months.map(monthName))}: what stands there is drawn from the months beside it and from the other waters.`;
    case 'pegs-never-drawn':
      return `${note.pegs.length === 1 ? 'Peg' : 'Pegs'} ${listed(note.pegs)} of ${note.water} never stood in a draw that counts: what is said of them rests on their features alone.`;
  }
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
