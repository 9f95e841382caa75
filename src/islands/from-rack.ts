/** Choosing devices from the register of a rack: the one that this browser keeps, a file, or pasted text. It is read, and nothing else. */
import type { Rules } from '../rack/sling-history.ts';
import type { Register } from '../rack/types.ts';
import { type HandedDevice, type Handover, handoverOf, handoverOfFile, handoverOfText, type Judge } from './rack-handover.ts';
import { KEY, openKept, STORE } from './kept-register.ts';

const find = <E extends Element = HTMLElement>(what: string): E => document.querySelector(what) as E;

/** What the page of the rack hands out: rules without their figures, and the day of the evidence. */
interface RulesFile { asOf: string; rules: Record<string, Omit<Rules[string], 'figures'>> }

/** Today where the reader is; never a day before the evidence, for a clock that is behind would make verdicts milder. */
function dayOfReader(asOf: string): string {
  const now = new Date();
  const day = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((n) => String(n).padStart(2, '0')).join('-');
  return day < asOf ? asOf : day;
}

/** The rules, fetched when they are first needed; null where they do not arrive. */
async function judgeFrom(address: string): Promise<Judge> {
  try {
    const { asOf, rules } = (await (await fetch(address)).json()) as RulesFile;
    return { rules: Object.fromEntries(Object.entries(rules).map(([id, rule]) => [id, { ...rule, figures: [] }])), on: dayOfReader(asOf) };
  } catch {
    return null;
  }
}

/** The register that is kept here, as it is, to read only; null where there is none. @throws where the browser refuses */
async function readKept(): Promise<Register | null> {
  const database = await openKept();
  try {
    return await new Promise((done, fail) => {
      const request = database.transaction(STORE, 'readonly').objectStore(STORE).get(KEY);
      request.onsuccess = () => done((request.result as { register: Register } | undefined)?.register ?? null);
      request.onerror = () => fail(request.error);
    });
  } finally {
    database.close();
  }
}

const counted = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

/** Starts the part of the page that reads a rack. @param onChoice what to do with the devices that are ticked */
export function chooseFromRack(onChoice: (ticked: readonly HandedDevice[]) => void): void {
  const from = find('#from-rack');
  const says = find('#rack-says');
  const list = find<HTMLUListElement>('#rack-items');
  const file = find<HTMLInputElement>('#register-file');
  const paste = find<HTMLTextAreaElement>('#register');
  let devices: readonly HandedDevice[] = [];
  let judge: Promise<Judge> | null = null;

  const choose = (): void => onChoice(devices.filter((_, at) => list.querySelector<HTMLInputElement>(`[value="${at}"]`)?.checked));

  function listItems(isTicked: (device: HandedDevice) => boolean): void {
    list.replaceChildren(...devices.map((device, at) => {
      const { name, count, made, wrong } = device.form;
      const [item, label, box] = [document.createElement('li'), document.createElement('label'), document.createElement('input')];
      box.type = 'checkbox';
      box.value = String(at);
      box.checked = isTicked(device);
      label.className = 'chip';
      const words = [name || 'no name', count === '' ? '' : `${count} of them`, device.due.replace(/^./, (letter) => letter.toLowerCase()), made === '' ? '' : `made ${made}`, wrong];
      label.append(box, words.filter((text) => text !== '').join(', '));
      item.append(label);
      return item;
    }));
  }

  function take(handed: Handover, isJudged: boolean): void {
    if (!handed.ok) {
      says.className = 'fault';
      says.replaceChildren('Nothing was taken. ', ...handed.faults.flatMap((fault) => [document.createElement('br'), fault]));
      return;
    }
    ({ devices } = handed);
    const now = devices.filter(({ isDueNow }) => isDueNow).length;
    listItems(({ isDueNow }) => isDueNow || now === 0);
    const ticked = now > 0 ? `Ticked: ${now} whose sling has to go now.` : isJudged ? 'No rule retires one now, so all are ticked.' : 'The rules of retirement did not arrive, so all are ticked.';
    says.className = '';
    says.textContent = `${counted(devices.length, 'item')} read. ${ticked} Tick what goes, untick what stays.${handed.invented === null ? '' : ` ${handed.invented}`}`;
    find('#pick').hidden = false;
    choose();
  }

  /** Reads with the rules at hand; what the browser refuses is said. */
  async function hand(read: (judge: Judge) => Handover | Promise<Handover>): Promise<void> {
    judge ??= judgeFrom(from.dataset['rules'] ?? '');
    const rules = await judge;
    if (!rules) judge = null;
    take(await read(rules), rules !== null);
  }

  const refused = (fault: string) => (): void => take({ ok: false, faults: [fault] }, false);
  file.onchange = async () => {
    const [one] = file.files ?? [];
    if (!one) return;
    await hand(async (rules) => handoverOfFile(new Uint8Array(await one.arrayBuffer()), rules)).catch(refused('line 1: the browser could not read this file'));
    // The same file can be chosen again after it was mended.
    file.value = '';
  };
  from.onclick = ({ target }) => {
    if (!(target instanceof HTMLButtonElement)) return;
    if (target.name === 'kept') hand(async (rules) => handoverOf(await readKept(), rules)).catch(refused('this browser does not open its store; take the file of the register instead'));
    else if (target.name === 'take') hand((rules) => handoverOfText(paste.value, rules)).catch(refused('the text could not be read'));
    else if (target.name === 'all' || target.name === 'none') {
      for (const box of list.querySelectorAll<HTMLInputElement>('input')) box.checked = target.name === 'all';
      choose();
    }
  };
  list.onchange = choose;
}
