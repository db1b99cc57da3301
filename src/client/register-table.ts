/** Makes the hazard register sortable by a column and filterable by water and kind. Without it the table is complete. */

type Direction = 'ascending' | 'descending';

for (const table of document.querySelectorAll<HTMLTableElement>('table[data-register]')) enhance(table);

function enhance(table: HTMLTableElement): void {
  const body = table.tBodies[0];
  if (body === undefined) return;
  const rows = [...body.rows];
  addSorting(table, body, rows);
  table.closest('.wide')?.before(filterFor(rows));
}

function addSorting(table: HTMLTableElement, body: HTMLTableSectionElement, rows: HTMLTableRowElement[]): void {
  const headings = [...table.querySelectorAll<HTMLTableCellElement>('th[data-sort]')];
  for (const heading of headings) {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'sort';
    button.append(...heading.childNodes);
    heading.append(button);
    button.addEventListener('click', () => {
      const direction: Direction = heading.ariaSort === 'ascending' ? 'descending' : 'ascending';
      for (const other of headings) other.removeAttribute('aria-sort');
      heading.ariaSort = direction;
      body.append(...sorted(rows, heading.cellIndex, heading.dataset.sort === 'number', direction));
    });
  }
}

function sorted(rows: HTMLTableRowElement[], column: number, isNumber: boolean, direction: Direction) {
  const sign = direction === 'ascending' ? 1 : -1;
  const value = (row: HTMLTableRowElement) => row.cells[column]?.dataset.value ?? '';
  return [...rows].sort((a, b) =>
    isNumber ? sign * (Number(value(a)) - Number(value(b))) : sign * value(a).localeCompare(value(b)),
  );
}

function filterFor(rows: HTMLTableRowElement[]): HTMLElement {
  const form = document.createElement('form');
  form.className = 'filter';
  const said = document.createElement('output');
  const selects = [
    choice('Water', rows, (row) => [row.dataset.water ?? '', row.dataset.waterName ?? '']),
    choice('Hazard', rows, (row) => [row.dataset.kind ?? '', row.cells[1]?.dataset.value ?? '']),
  ];
  form.append(...selects.map(({ label }) => label), said);
  form.addEventListener('input', () => {
    let shown = 0;
    for (const row of rows) {
      row.hidden = selects.some(({ select, key }) => select.value !== '' && select.value !== key(row));
      if (!row.hidden) shown += 1;
    }
    said.value = `${shown} of ${rows.length} shown`;
  });
  form.addEventListener('submit', (event) => event.preventDefault());
  return form;
}

function choice(name: string, rows: HTMLTableRowElement[], pair: (row: HTMLTableRowElement) => [string, string]) {
  const label = document.createElement('label');
  const select = document.createElement('select');
  select.add(new Option('all', ''));
  const options = new Map(rows.map(pair));
  for (const [value, text] of [...options].sort((a, b) => a[1].localeCompare(b[1])))
    select.add(new Option(text, value));
  label.append(`${name} `, select);
  return { label, select, key: (row: HTMLTableRowElement) => pair(row)[0] };
}
