import { readPegOfWater } from '../../domain/typed-peg.ts';
import { make } from '../make.ts';
import { say, sayAll } from '../page-words.ts';
import { phoneStore } from '../phone-store.ts';
import { addressWithPegs, keepPegs, keptPegs, withPeg } from './kept-pegs.ts';

/** Leaves the kept pegs on the page, up to four, and lets the reader add and take out. Without it all of them stand there. */
const list = document.querySelector<HTMLOListElement>('[data-compare]');
const form = document.querySelector<HTMLFormElement>('[data-compare-add]');
if (list !== null && form !== null) comparePegs(list, form);

function comparePegs(list: HTMLOListElement, form: HTMLFormElement): void {
  const cards = [...list.querySelectorAll<HTMLLIElement>(':scope > [data-peg]')];
  const all = cards.map(({ dataset }) => dataset.peg ?? '');
  const place = { base: document.body.dataset.guideBase ?? '/', water: form.dataset.compareAdd ?? '' };
  const field = form.querySelector('input')!;
  const said = form.querySelector<HTMLElement>('[role="status"]')!;
  const store = phoneStore();
  const opened = keptPegs(location.search, store, place, all);
  let kept = opened.pegs;

  const tell = (words: string) => {
    said.textContent = words;
    if (words === '') field.removeAttribute('aria-invalid');
    else field.setAttribute('aria-invalid', 'true');
  };
  const show = () => {
    for (const card of cards) card.hidden = !kept.includes(card.dataset.peg ?? '');
    list.style.setProperty('--pegs', String(Math.max(1, kept.length)));
    list.append(...kept.map((peg) => cards[all.indexOf(peg)]!));
    history.replaceState(history.state, '', addressWithPegs(location.href, kept));
    list.dataset.ready = '';
    if (kept.length === 0 && said.textContent === '') {
      said.textContent = say('kept.noneYet');
    }
  };
  const change = (next: ReturnType<typeof withPeg>) => {
    kept = next.pegs;
    const isKept = keepPegs(store, place, kept);
    tell(sayAll(next.said) || (isKept ? '' : say('kept.addressHolds')));
    show();
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const { peg, fault } = readPegOfWater(field.value, form.dataset.name ?? '', all);
    if (peg === null) {
      tell(sayAll([fault]));
      return;
    }
    field.value = '';
    change(
      kept.includes(peg)
        ? { pegs: kept, said: [{ key: 'kept.alreadyHere', values: { peg } }] }
        : withPeg(kept, peg, true),
    );
  });
  for (const card of cards) {
    const peg = card.dataset.peg ?? '';
    const out = make('button', { type: 'button', className: 'screen-only' }, say('kept.takeOut'));
    out.setAttribute('aria-label', say('kept.takeOutPeg', { peg }));
    out.addEventListener('click', () => {
      change(withPeg(kept, peg, false));
      field.focus();
    });
    card.append(out);
  }
  show();
  if (opened.said.length > 0) tell(sayAll(opened.said));
}
