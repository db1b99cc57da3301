/**
 * Finds pegs by number on the first page: the field picks out the links below it, and Enter opens the sheet where only
 * one water has such a peg. The links are the list: nothing else is loaded, and without script they stand as they are.
 */

interface Found {
  readonly water: string;
  readonly peg: string;
  readonly link: HTMLAnchorElement;
}

const form = document.querySelector<HTMLFormElement>('[data-find-peg]');
const field = form?.querySelector<HTMLInputElement>('input');
const said = form?.querySelector<HTMLElement>('[data-find-said]');

if (form && field && said) {
  const pegs = pegsOnPage();
  const update = () => say(said, matching(pegs, field.value), field.value);
  field.addEventListener('input', update);
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const found = matching(pegs, field.value);
    update();
    const [only, second] = found;
    if (only !== undefined && second === undefined) location.assign(only.link.href);
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

/** Pegs of that number; capital letters and leading zeros make no difference. */
function matching(pegs: readonly Found[], typed: string): readonly Found[] {
  const wanted = plain(typed);
  return wanted === '' ? [] : pegs.filter(({ peg }) => plain(peg) === wanted);
}

function plain(peg: string): string {
  return peg
    .trim()
    .toLowerCase()
    .replace(/^0+(?=.)/, '');
}

function say(place: HTMLElement, found: readonly Found[], typed: string): void {
  if (typed.trim() === '') {
    place.replaceChildren();
    return;
  }
  if (found.length === 0) {
    place.textContent = `There is no peg ${typed.trim()} here. All pegs are listed below.`;
    return;
  }
  place.replaceChildren(
    ...found.map(({ water, peg, link }) => {
      const answer = document.createElement('a');
      answer.href = link.href;
      answer.textContent = `${water} ${peg}${stateOf(link)}`;
      return answer;
    }),
  );
}

/** What is said of a peg beside its number: closed, or a number that is on no post any more. */
function stateOf(link: HTMLAnchorElement): string {
  if (link.closest('.gone-numbers') !== null) return ', on no post any more';
  return link.classList.contains('shut') ? ', closed' : '';
}
