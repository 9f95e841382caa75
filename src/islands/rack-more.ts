/** Everything of the rack but its list: one part, which comes when it is asked for or when the browser is idle. */
export { AddView } from '../components/rack/add.tsx';
export { conflictKey, ConflictsView, FilesView } from '../components/rack/files.tsx';
export { ItemView } from '../components/rack/item.tsx';
export { Sheet } from '../components/rack/sheet.tsx';
export { merge, readImport, registerCalendar, registerCsv, registerJson } from './rack-exchange.ts';
