/** The browser's own database in which a register is kept on the reader's device. */
/** Name of the database, of the channel and of the locks. */
export const NAME = 'second-sling-rack';
export const STORE = 'register';
export const KEY = 'own';

/** Opens the database; where there is none, an empty one. @throws where the browser refuses */
export function openKept(): Promise<IDBDatabase> {
  return new Promise((done, fail) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error);
    request.onblocked = () => fail(new Error('another window blocks the database'));
  });
}
