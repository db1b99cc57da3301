/**
 * Makes the club's tables (`table[data-ledger]`) sortable by any heading that carries `data-sort`, and filterable by water
 * and by kind (`data-water`, `data-water-name`, `data-kind`, `data-kind-name` on a row). Without it the table is complete,
 * in the order the page gives. On a phone, where rows become cards without headings, a choice of order takes their place.
 */

import { chooser, labelled, make } from './make.ts';

type Direction = 'ascending' | 'descending';

for (const table of document.querySelectorAll<HTMLTableElement>('table[data-ledger]')) enhance(table);

function enhance(table: HTMLTableElement): void {
  const body = table.tBodies[0];
  if (body === undefined) return;
  const rows = [...body.rows];
  const headings = [...table.querySelectorAll<HTMLTableCellElement>('th[data-sort]')];
  const order = orderChoice(headings);
  const sort = (heading: HTMLTableCellElement | null, direction: Direction) => {
    for (const other of headings) other.removeAttribute('aria-sort');
    if (heading !== null) heading.ariaSort = direction;
    order.select.value = heading === null ? '' : String(headings.indexOf(heading));
    body.append(...(heading === null ? rows : sorted(rows, heading, direction)));
  };
  addButtons(headings, sort);
  order.select.addEventListener('change', () => {
    const heading = headings[Number(order.select.value)];
    sort(order.select.value === '' || heading === undefined ? null : heading, firstDirection(heading));
  });
  // Room for it is kept from the first, so that no row moves when it comes.
  table.closest('.wide')?.previousElementSibling?.append(filterFor(rows, order.label));
}

function addButtons(
  headings: readonly HTMLTableCellElement[],
  sort: (heading: HTMLTableCellElement, direction: Direction) => void,
): void {
  for (const heading of headings) {
    const button = make('button', { type: 'button', className: 'sort' }, ...heading.childNodes);
    heading.append(button);
    button.addEventListener('click', () =>
      sort(heading, heading.ariaSort === null ? firstDirection(heading) : opposite(heading.ariaSort)),
    );
  }
}

/** The highest risk is what one looks for first; names and days begin at their beginning. */
function firstDirection(heading: HTMLTableCellElement | undefined): Direction {
  return heading?.dataset.sort === 'number' ? 'descending' : 'ascending';
}

function opposite(direction: string): Direction {
  return direction === 'ascending' ? 'descending' : 'ascending';
}

function sorted(rows: readonly HTMLTableRowElement[], heading: HTMLTableCellElement, direction: Direction) {
  const sign = direction === 'ascending' ? 1 : -1;
  const value = (row: HTMLTableRowElement) => row.cells[heading.cellIndex]?.dataset.value ?? '';
  return heading.dataset.sort === 'number'
    ? rows.toSorted((a, b) => sign * (Number(value(a)) - Number(value(b))))
    : rows.toSorted((a, b) => sign * value(a).localeCompare(value(b)));
}

function filterFor(rows: readonly HTMLTableRowElement[], order: HTMLElement): HTMLElement {
  const said = make('output');
  const water = choice('Water', optionsOf(rows, 'water', 'waterName'));
  const kind = choice('Kind', optionsOf(rows, 'kind', 'kindName'));
  const form = make('form', { className: 'filter screen-only' }, water.label, kind.label, order, said);
  form.addEventListener('input', () => {
    const passes = (select: HTMLSelectElement, value = '') => select.value === '' || select.value === value;
    const isShown = ({ dataset }: HTMLTableRowElement) =>
      passes(water.select, dataset.water) && passes(kind.select, dataset.kind);
    for (const row of rows) row.hidden = !isShown(row);
    const shown = rows.filter(({ hidden }) => !hidden).length;
    said.value = shown === rows.length ? '' : `${shown} of ${rows.length} shown`;
  });
  form.addEventListener('submit', (event) => event.preventDefault());
  return form;
}

function orderChoice(headings: readonly HTMLTableCellElement[]) {
  const order = choice(
    'Order',
    headings.map((heading, index) => [String(index), heading.textContent.trim()]),
    'as the page gives it',
  );
  order.label.className = 'order';
  return order;
}

function optionsOf(
  rows: readonly HTMLTableRowElement[],
  value: string,
  words: string,
): readonly (readonly [string, string])[] {
  const options = new Map(rows.map(({ dataset }) => [dataset[value] ?? '', dataset[words] ?? '']));
  return [...options].sort((a, b) => a[1].localeCompare(b[1]));
}

function choice(name: string, options: readonly (readonly [string, string])[], none = 'all') {
  const select = chooser([['', none], ...options]);
  return { label: labelled(name, select), select };
}
