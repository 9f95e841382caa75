/** Fills the form that goes with the devices from the register of a rack. What is typed stays in the page alone. */
import { type FormDevice, type Handover, handoverOfFile, handoverOfText } from './rack-handover.ts';

const find = <E extends Element = HTMLElement>(what: string): E => document.querySelector(what) as E;
const from = find('#from-rack');
const says = find('#rack-says');
const list = find<HTMLUListElement>('#rack-items');
const body = find<HTMLTableSectionElement>('#devices tbody');
const FIELDS = ['name', 'count', 'rating', 'made', 'material', 'wrong'] as const satisfies readonly (keyof FormDevice)[];
const LEAST_ROWS = body.rows.length;
let devices: FormDevice[] = [];

const cells = (row: HTMLTableRowElement, field: string): HTMLTextAreaElement | HTMLInputElement => row.querySelector(`[data-field="${field}"]`) as HTMLInputElement;

/** Writes the ticked devices into the first rows. Rows below stay as they are; there are as many as are needed. */
function fillRows(): void {
  const ticked = devices.filter((_, at) => list.querySelector<HTMLInputElement>(`[value="${at}"]`)?.checked);
  while (body.rows.length < Math.max(LEAST_ROWS, ticked.length)) addRow();
  for (const [at, row] of [...body.rows].entries()) {
    const device = ticked[at];
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

function listItems(): void {
  list.replaceChildren(...devices.map(({ name, count, made, wrong }, at) => {
    const [item, label, box] = [document.createElement('li'), document.createElement('label'), document.createElement('input')];
    box.type = 'checkbox';
    box.value = String(at);
    box.checked = true;
    label.className = 'chip';
    label.append(box, [name || 'no name', count === '' ? '' : `${count} of them`, made === '' ? '' : `made ${made}`, wrong].filter((text) => text !== '').join(', '));
    item.append(label);
    return item;
  }));
}

function take(handed: Handover): void {
  if (!handed.ok) {
    says.className = 'fault';
    says.replaceChildren(`Nothing was taken. `, ...handed.faults.flatMap((fault) => [document.createElement('br'), fault]));
    return;
  }
  ({ devices } = handed);
  listItems();
  fillRows();
  says.className = '';
  const count = devices.length;
  says.textContent = `${count} ${count === 1 ? 'item' : 'items'} taken. Untick what stays at home.${handed.invented === null ? '' : ` ${handed.invented}`}`;
  find('#pick').hidden = false;
}

const paste = find<HTMLTextAreaElement>('#register');
const file = find<HTMLInputElement>('#register-file');
file.onchange = async () => {
  const [one] = file.files ?? [];
  if (!one) return;
  try {
    take(handoverOfFile(new Uint8Array(await one.arrayBuffer())));
  } catch {
    take({ ok: false, faults: ['line 1: the browser could not read this file'] });
  }
  // The same file can be chosen again after it was mended.
  file.value = '';
};
from.onclick = ({ target }) => {
  if (!(target instanceof HTMLButtonElement)) return;
  if (target.name === 'take') take(handoverOfText(paste.value));
  else for (const box of list.querySelectorAll<HTMLInputElement>('input')) box.checked = target.name === 'all';
  if (target.name !== 'take') fillRows();
};
list.onchange = fillRows;
find<HTMLButtonElement>('#more-rows').onclick = addRow;
find<HTMLButtonElement>('#print').onclick = () => print();
