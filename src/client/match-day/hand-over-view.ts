import { matchFileText, readMatchFile } from '../../match-day/match-file.ts';
import { button, make } from '../make.ts';
import { canShare, downloadFile, shareFile } from '../round/hand-over.ts';
import type { MatchDay } from './match-day.ts';
import { slipReaderView } from './slip-reader.ts';

/** What leaves this phone, and what is taken from another. Made once: what it says must outlast the next note. */
export function handOverView(day: MatchDay): HTMLElement {
  const said = make('p', { role: 'status' });
  const hand = async (hasNames: boolean) => {
    const { match, venue } = day.data;
    const text = await matchFileText({ match, venue, phone: day.phone, hasNames, notes: day.notes });
    // Phones pass on text files and refuse others.
    const file = new File([text], `match-${match}-${day.phone}${hasNames ? '-names' : ''}.txt`, { type: 'text/plain' });
    const how = canShare(file) ? await shareFile(file) : downloadFile(file);
    said.textContent = how === 'cancelled' ? 'Nothing was handed over.' : `${file.name} was ${how}.`;
  };
  const input = make('input', { type: 'file', className: 'unseen' });
  input.addEventListener('change', () => {
    const [file] = input.files ?? [];
    if (file !== undefined)
      void file.text().then(async (text) => {
        said.textContent = await takenWords(day, text);
      });
    input.value = '';
  });
  return make(
    'div',
    {},
    button('Hand over without names', () => void hand(false), true),
    make(
      'p',
      { className: 'soft' },
      'For the other scale, or for the secretary: pegs, weights and every change, no name.',
    ),
    button('Hand over with names', () => void hand(true)),
    make(
      'p',
      { className: 'soft' },
      'Only for whoever takes it into the log: there the names become references, and none is kept. Do not pass it on.',
    ),
    make('label', { className: 'wide-button' }, 'Take the file of another phone', input),
    make(
      'p',
      { className: 'soft' },
      `Beside what is noted here stands this phone’s sign, ${day.phone}: it tells phones apart and says nothing else.`,
    ),
    said,
    slipReaderView(day.data.venue),
  );
}

async function takenWords(day: MatchDay, text: string): Promise<string> {
  const read = await readMatchFile(text);
  if (!read.ok) return read.why;
  if (read.file.match !== day.data.match || read.file.venue !== day.data.venue) {
    return `That file is of ${read.file.match} at ${read.file.venue}, not of this match: nothing was taken.`;
  }
  if (read.isEdited)
    return 'That file was changed since it was handed over: nothing was taken. Ask for it to be sent again.';
  const { added, edited } = await day.take(read.file.notes);
  if (edited.length > 0) return `${added} notes taken; ${edited.length} that were changed on the way were left out.`;
  return added === 0 ? 'Everything in it is here already.' : `${added} notes taken.`;
}
