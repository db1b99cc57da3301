import type { SearchEntry } from '../../atlas/search-entries.ts';
import { make } from '../make.ts';
import { ENGLISH, say } from '../page-words.ts';
import { readDays } from '../read-days.ts';
import { addressWith } from '../shared-address.ts';
import { showVerdicts } from '../verdict-of-day.ts';
import type { Found, FoundGroup } from './search-guide.ts';

/** The search page: what is typed is searched for as it is typed. Index and library come with the first search alone. */
const form = document.querySelector<HTMLFormElement>('[data-search]');
const place = document.querySelector<HTMLElement>('[data-found]');
if (form !== null && place !== null) followSearch(form, place);

type Guide = Pick<typeof import('./search-guide.ts'), 'excerpt' | 'kindName'> & {
  readonly search: (typed: string) => Found;
};

function followSearch(form: HTMLFormElement, place: HTMLElement): void {
  const field = form.querySelector<HTMLInputElement>('input[type="search"]')!;
  const said = form.querySelector<HTMLElement>('[role="status"]')!;
  field.setAttribute('aria-describedby', said.id);
  let guide: Promise<Guide> | null = null;
  const search = async () => {
    const typed = field.value;
    history.replaceState(history.state, '', addressFor(typed));
    if (typed.trim() === '') {
      said.textContent = '';
      field.removeAttribute('aria-invalid');
      place.replaceChildren();
      return;
    }
    guide ??= loadGuide(place.dataset.found ?? '');
    try {
      const loaded = await guide;
      if (field.value !== typed) return;
      const found = loaded.search(typed);
      said.textContent = found.said;
      field.setAttribute('aria-invalid', String(found.groups.length === 0));
      place.replaceChildren(...found.groups.map((group) => shownGroup(group, loaded)));
      showVerdicts(readDays(), place);
      document.dispatchEvent(new Event('pegs-shown'));
    } catch {
      guide = null;
      said.textContent = say('found.notYet');
    }
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    void search();
  });
  field.addEventListener('input', () => void search());
  field.value = (new URLSearchParams(location.search).get('for') ?? '').slice(0, field.maxLength);
  if (field.value !== '') void search();
}

async function loadGuide(address: string): Promise<Guide> {
  const [{ searchGuide, excerpt, kindName }, answer] = await Promise.all([import('./search-guide.ts'), fetch(address)]);
  if (!answer.ok) throw new Error(`${address} answered ${answer.status}`);
  return { search: searchGuide((await answer.json()) as readonly SearchEntry[], say), excerpt, kindName };
}

function addressFor(typed: string): string {
  return addressWith(location.href, { for: typed.trim() === '' ? null : typed });
}

function shownGroup({ kind, entries }: FoundGroup, guide: Guide): HTMLElement {
  return make(
    'section',
    {},
    make('h2', {}, guide.kindName(kind, say)),
    make('ul', {}, ...entries.map((found) => shownEntry(found, guide))),
  );
}

function shownEntry({ entry, terms }: FoundGroup['entries'][number], guide: Guide): HTMLLIElement {
  const item = make('li', {}, make('a', { href: entry.href }, entry.title));
  if (entry.closed !== undefined || entry.dated !== undefined) item.append(' ', closedWords(entry));
  // It may be a notice that closes pegs.
  if (entry.days !== undefined) item.append(' ', make('small', { lang: ENGLISH }, entry.days));
  const pieces = guide
    .excerpt(entry.text, terms)
    .map(([piece, isFound]) => (isFound ? make('mark', {}, piece) : piece));
  item.append(make('p', {}, ...pieces));
  return item;
}

/** As `ClosedWords.astro` has it, so that the day of reading sets it right alike. */
function closedWords({ closed, dated }: SearchEntry): HTMLElement {
  const because = make('span', {}, closed ?? '');
  because.dataset.say = 'because';
  const words = make(
    'span',
    { className: 'closed-words', lang: ENGLISH, hidden: closed === undefined },
    make('b', { className: 'closed-word' }, 'closed'),
    ' ',
    because,
  );
  if (dated !== undefined) Object.assign(words.dataset, { verdict: dated, when: 'closed' });
  return words;
}
