/** Fills the form that goes with the devices from the register of a rack. What is typed stays in the page alone. */
import { chooseFromRack } from './from-rack.ts';
import type { FormDevice, HandedDevice } from './rack-handover.ts';

const find = <E extends Element = HTMLElement>(what: string): E => document.querySelector(what) as E;
const body = find<HTMLTableSectionElement>('#devices tbody');
const FIELDS = ['name', 'count', 'rating', 'made', 'material', 'wrong'] as const satisfies readonly (keyof FormDevice)[];
const LEAST_ROWS = body.rows.length;

const cells = (row: HTMLTableRowElement, field: string): HTMLTextAreaElement | HTMLInputElement => row.querySelector(`[data-field="${field}"]`) as HTMLInputElement;

/** Writes the ticked devices into the first rows. Rows below stay as they are; there are as many as are needed. */
function fillRows(ticked: readonly HandedDevice[]): void {
  while (body.rows.length < Math.max(LEAST_ROWS, ticked.length)) addRow();
  for (const [at, row] of [...body.rows].entries()) {
    const device = ticked[at]?.form;
    const wasFilled = row.dataset['from'] === 'rack';
    if (!device && !wasFilled) continue;
    for (const field of FIELDS) cells(row, field).value = device?.[field] ?? '';
    row.dataset['from'] = device ? 'rack' : '';
  }
}

/** A blank row like the first, with its own number. */
function addRow(): void {
  const first = body.rows[0] as HTMLTableRowElement;
  const row = first.cloneNode(true) as HTMLTableRowElement;
  const number = body.rows.length + 1;
  (row.cells[0] as HTMLTableCellElement).textContent = String(number);
  row.dataset['from'] = '';
  for (const field of row.querySelectorAll<HTMLInputElement>('[data-field]')) {
    field.value = '';
    field.ariaLabel = (field.ariaLabel ?? '').replace(/\d+$/, String(number));
  }
  body.append(row);
}

chooseFromRack(fillRows);
find<HTMLButtonElement>('#more-rows').onclick = addRow;
find<HTMLButtonElement>('#print').onclick = () => print();
