/** The drawings of the site, drawn once for all pages. */
import { type DrawingFile, drawingFiles } from '../drawings/drawings.ts';

let drawn: Map<string, DrawingFile> | undefined;

/** Every drawing by its path, `drawings/basket/right.svg`. */
export const siteDrawings = (): ReadonlyMap<string, DrawingFile> => (drawn ??= new Map(drawingFiles().map((file) => [file.path, file])));
