/** Everything in the archive of the course kit, from the built site. */
import { MAKER_FIRST } from '../downloads/readme.ts';
import { KIT_PAGE } from './names.ts';
import { type Kit, offlinePage } from './offline-page.ts';

/** The folder that the archive unpacks into. */
export const KIT_FOLDER = 'second-sling-course-kit';

/** The built site as the kit reads it. */
export interface BuiltSite {
  /** Paths of all files, without a leading slash. */
  files: readonly string[];
  read(path: string): Uint8Array<ArrayBuffer>;
  /** Text of the project's licences. */
  licence: string;
  base: string;
  address(path: string): string;
}

/** Path in the kit by a path of the site, of pages and of files. */
function placesOf(files: readonly string[]): Map<string, string> {
  const lessons = files.flatMap((path) => /^teach\/([^/]+)\/handout\/index\.html$/.exec(path)?.[1] ?? []);
  const parts = [['', 'lessons'], ['handout/', 'handouts'], ['variants/', 'variants'], ['answers/', 'answers']] as const;
  return new Map([
    [KIT_PAGE, 'index.html'], ['/teach/', 'index.html'],
    ...lessons.flatMap((id) => parts.map(([part, folder]) => [`/teach/${id}/${part}`, `${folder}/${id}.html`] as const)),
    ...files.filter((path) => /^drawings\/.*\.(?:svg|png)$|^cite\/course-kit\./.test(path)).map((path) => [`/${path}`, path] as const),
    [`${KIT_PAGE}readme.txt`, 'README.txt'],
  ]);
}

/**
 * The files, each below the kit's folder.
 * @throws RangeError where the built site lacks a page, or a page a part
 */
export function kitFiles({ files, read, licence, base, address }: BuiltSite): { path: string; bytes: Uint8Array<ArrayBuffer> }[] {
  const text = (path: string): string => new TextDecoder().decode(read(path));
  const bytes = (written: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(written);
  const places = placesOf(files);
  const page = (path: string): string => text(`${path.slice(1)}index.html`);
  const version = /Evidence <span data-id[^>]*>([^<]+)</.exec(page(KIT_PAGE))?.[1];
  if (!version) throw new RangeError(`files: the page ${KIT_PAGE} names no version of the evidence`);
  const kit: Kit = { places, base, address, version };
  return [
    ...[...places].filter(([path]) => path !== '/teach/').map(([path, place]) => ({
      path: `${KIT_FOLDER}/${place}`,
      bytes: place.endsWith('.html') ? bytes(offlinePage(page(path), path, place, kit)) : read(path.slice(1)),
    })),
    { path: `${KIT_FOLDER}/LICENSE.txt`, bytes: bytes(`${MAKER_FIRST}\nThe licences below say who may copy this, and not what it is good for.\n\n${licence}`) },
  ];
}
