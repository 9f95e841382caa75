/** A scene as SVG: strands in two layers, marks below and above. */
import { cross } from './crossings.ts';
import { pathOf } from './curves/path.ts';
import { type Piece, topOf } from './layers.ts';
import { type Kind, type Mark, type Scene, type Strand, WIDTH } from './scene.ts';
import { FILE_STYLE } from './style.ts';
import { EDGE, GAP, STROKES, widthOf } from './strokes.ts';

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');

function markup(mark: Mark): string {
  if (mark.mark === 'path') return `<path class="${mark.class}" d="${mark.d}"/>`;
  const { at: [x, y], anchor = 'start', text } = mark;
  return `<text x="${x}" y="${y}"${anchor === 'start' ? '' : ` text-anchor="${anchor}"`}>${escaped(text)}</text>`;
}

const stroked = (name: string, width: number, d: string): string => (d === '' ? '' : `<path class="${name}" stroke-width="${width}" d="${d}"/>`);

/** Everything inside the svg element. */
function inside(scene: Scene): string {
  const crossed = cross(scene.strands);
  const top = topOf(crossed);
  const kinds = [...new Set(scene.strands.map(({ kind }) => kind))];
  const kindOf = (piece: Piece): Kind => (crossed.strands[piece.strand] as Strand).kind;
  const drawn = (pieces: readonly Piece[], kind: Kind): string =>
    pieces.filter((piece) => kindOf(piece) === kind).map(({ strand, from, to }) => pathOf(crossed.curves[strand] as (typeof crossed.curves)[number], from, to)).join('');
  const whole = crossed.curves.map(({ length }, strand): Piece => ({ strand, from: 0, to: length }));
  // A cut end shows its edge: what fills the band stops short of it.
  const filled = whole.map((piece): Piece => {
    const { closed, goesOn } = crossed.strands[piece.strand] as Strand;
    return closed || goesOn ? piece : { ...piece, from: EDGE, to: piece.to - EDGE };
  });
  // What fills a band reaches a little beyond its edges, so that no edge is left across the band where a piece ends.
  const longer = (pieces: readonly Piece[]): Piece[] => pieces.map(({ strand, from, to }) => ({ strand, from: from - 0.8, to: to + 0.8 }));
  const body = (pieces: readonly Piece[], inner: readonly Piece[]): string => kinds.map((kind) =>
    STROKES[kind].map((stroke, i) => stroked(stroke.class, stroke.width, drawn(i === 0 ? pieces : inner, kind))).join('')).join('');
  const gaps = kinds.map((kind) => stroked('g', widthOf(kind) + 2 * GAP, drawn(top.gaps, kind))).join('');
  return `${(scene.below ?? []).map(markup).join('')}${body(whole, filled)}${gaps}${body(top.pieces, longer(top.pieces))}${(scene.above ?? []).map(markup).join('')}`;
}

const marks = ({ below = [], above = [] }: Scene): readonly Mark[] => [...below, ...above];

/** Letters of a scene: their text, the place of their base line, and which end of them stands there. Drawing units. */
export const lettersOf = (scene: Scene): Extract<Mark, { mark: 'label' }>[] => marks(scene).flatMap((mark) => (mark.mark === 'label' ? [mark] : []));

/** A scene without its letters, as a group for another SVG that carries a style and draws the letters itself. */
export function unletteredSvg(scene: Scene): string {
  const bare = (all: readonly Mark[] = []): Mark[] => all.filter(({ mark }) => mark !== 'label');
  return `<g class="d">${inside({ ...scene, below: bare(scene.below), above: bare(scene.above) })}</g>`;
}

function box({ height, from = 0 }: Scene): string {
  return `viewBox="0 ${from} ${WIDTH} ${height - from}" width="${WIDTH}" height="${height - from}"`;
}

/** SVG to stand in a page that carries `PAGE_STYLE`. The alternative is its name. */
export function inlineSvg(scene: Scene, alt: string): string {
  return `<svg class="d" ${box(scene)} role="img" aria-label="${escaped(alt)}">${inside(scene)}</svg>`;
}

/**
 * SVG as a file of its own, to be shown by an image element.
 * @param says what the file says of itself where it is passed on alone, such as whose it is
 */
export function fileSvg(scene: Scene, alt: string, says = ''): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" class="d" ${box(scene)}><title>${escaped(alt)}</title>${says && `<desc>${escaped(says)}</desc>`}<style>${FILE_STYLE}</style>${inside(scene)}</svg>\n`;
}
