/** The drawings of the site, drawn once for all pages. */
import { siteName } from '../site.ts';
import { type DrawingFile, drawingFiles } from '../../drawings/drawings.ts';

/** What a drawing says wherever it is passed on alone: the maker first, and whose it is. */
export const DRAWING_WORDS: readonly string[] = ['Ask the maker first. A drawing is no instruction.', `${siteName}, CC BY 4.0`];

let drawn: Map<string, DrawingFile> | undefined;

/** Every drawing by its path, `drawings/basket/right.svg`. */
export const siteDrawings = (): ReadonlyMap<string, DrawingFile> => (drawn ??= new Map(drawingFiles(DRAWING_WORDS.join(' ')).map((file) => [file.path, file])));
