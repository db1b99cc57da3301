import { type NamedPeg, readTypedPeg, type TypedPeg } from '../domain/typed-peg.ts';
import { ENGLISH, say, sayAll } from './page-words.ts';

/**
 * Finds pegs by number on the first page: the field picks out the links below it, and Enter opens the sheet where only
 * one water has such a peg. The links are the list: nothing else is loaded, and without script they stand as they are.
 */

interface Found extends NamedPeg {
  readonly link: HTMLAnchorElement;
}

const form = document.querySelector<HTMLFormElement>('[data-find-peg]');
const field = form?.querySelector<HTMLInputElement>('input');
const said = form?.querySelector<HTMLElement>('[data-find-said]');

if (form && field && said) {
  const pegs = pegsOnPage();
  const read = () => readTypedPeg(field.value, pegs);
  const update = () => {
    const answer = read();
    show(said, answer, field.value);
    const isWrong = answer !== null && answer.faults.length > 0;
    if (isWrong) field.setAttribute('aria-invalid', 'true');
    else field.removeAttribute('aria-invalid');
  };
  field.addEventListener('input', update);
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const answer = read();
    update();
    const [only, second] = answer?.pegs ?? [];
    if (answer === null) location.assign(searchAddress(field.value));
    else if (only !== undefined && second === undefined && answer.faults.length === 0) location.assign(only.link.href);
    else said.querySelector('a')?.focus();
  });
  update();
}

function pegsOnPage(): readonly Found[] {
  return [...document.querySelectorAll<HTMLElement>('[data-water]')].flatMap((section) =>
    [...section.querySelectorAll<HTMLAnchorElement>('.peg-grid a, .gone-numbers a')].map((link) => ({
      water: section.dataset.water ?? '',
      peg: link.firstChild?.textContent?.trim() ?? '',
      link,
    })),
  );
}

/** Answers what was typed below the field: links to the pegs meant, words where there is none, the way to a search for words. */
function show(place: HTMLElement, answer: TypedPeg<Found> | null, typed: string): void {
  if (answer === null) {
    const search = document.createElement('a');
    search.href = searchAddress(typed);
    search.textContent = say('find.search', { typed: typed.trim() });
    place.replaceChildren(search);
    return;
  }
  const links = answer.pegs.map(({ water, peg, link }) => {
    const found = document.createElement('a');
    found.href = link.href;
    found.append(`${water} ${peg}`, ...stateOf(link));
    return found;
  });
  const said = answer.faults.length === 0 ? '' : sayAll(answer.faults);
  const below = said === '' || links.length > 0 ? '' : ` ${say('find.listed')}`;
  place.replaceChildren(...(said === '' ? [] : [`${said}${below}`]), ...links);
}

function searchAddress(typed: string): string {
  const base = document.body.dataset.guideBase ?? '/';
  return `${base}search/?for=${encodeURIComponent(typed.trim())}`;
}

/** What is said of a peg beside its number: closed, or a number that is on no post any more. */
function stateOf(link: HTMLAnchorElement): readonly (string | Node)[] {
  if (link.closest('.gone-numbers') !== null) return [say('find.gone')];
  if (!link.classList.contains('shut')) return [];
  const closed = document.createElement('span');
  closed.lang = ENGLISH;
  closed.textContent = ', closed';
  return [closed];
}
