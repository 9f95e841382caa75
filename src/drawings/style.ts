/**
 * The style of all drawings. Within a page they take its tokens; as files of their own they bring the same colours for
 * light and dark. Colours are ink, blue and vermillion; what matters is told by shape and word as well.
 */

/** Classes of strokes, fills and letters. Lengths are drawing units. */
const RULES = [
  '.d path{fill:none;stroke-linejoin:round}',
  '.d .g{stroke:var(--paper)}',
  '.d .te{stroke:var(--edge)}',
  '.d .tf{stroke:var(--tape)}',
  '.d .in{stroke:var(--edge);stroke-dasharray:4 3}',
  '.d .ie{stroke:var(--ink)}',
  '.d .lf,.d .pf{stroke:var(--paper)}',
  '.d .mf{stroke:var(--metal)}',
  '.d .thin{stroke:var(--ink);stroke-width:1.5}',
  '.d .solid{stroke:var(--ink);stroke-width:1.5;fill:var(--paper)}',
  '.d .metal{stroke:var(--ink);stroke-width:1.5;fill:var(--metal)}',
  '.d .ink{fill:var(--ink)}',
  '.d .arrow{stroke:var(--ink);stroke-width:2.5}',
  '.d .seam{stroke:var(--ink);stroke-width:1.2}',
  '.d .move{stroke:var(--ink);stroke-width:2;stroke-dasharray:5 3}',
  '.d .bad{stroke:var(--vermillion);stroke-width:4}',
  '.d .run{stroke:var(--vermillion);stroke-width:2.5;stroke-dasharray:6 4}',
  '.d .runhead{fill:var(--vermillion)}',
  '.d text{font:13px/1 system-ui,sans-serif;fill:var(--ink)}',
];

/** Tints of ink and blue on paper, light and dark: the fill of tape, its edges, and metal. */
const LIGHT_TINTS = { edge: '#0072b2', tape: '#c4deea', metal: '#d2d3d3' };
const LIGHT = Object.entries(LIGHT_TINTS).map(([name, colour]) => `--${name}:${colour}`).join(';');
export const DARK = '--edge:#4c9cc9;--tape:#08486d;--metal:#3a3f43';

const FORCED = '@media(forced-colors:active){.d{--paper:Canvas;--ink:CanvasText;--edge:CanvasText;--vermillion:CanvasText;--tape:Canvas;--metal:Canvas;forced-color-adjust:none}}';

/** For a page that has the tokens paper, ink and vermillion. */
export const PAGE_STYLE = [
  `.d{${LIGHT};display:block;width:100%;max-width:20rem;height:auto}`,
  `@media screen and (prefers-color-scheme:dark){.d{${DARK}}}`,
  FORCED, ...RULES,
].join('\n');

/** For a file of its own: the same, with its own paper and ink. Print is always light. */
export const FILE_STYLE = [
  `.d{--paper:#fcfcfa;--ink:#16191c;--vermillion:#d55e00;${LIGHT};background:var(--paper)}`,
  `@media screen and (prefers-color-scheme:dark){.d{--paper:#121518;--ink:#e9ecee;${DARK}}}`,
  FORCED, ...RULES,
].join('');

/** Colours of a picture for slides: light, on white whatever the reader's scheme. */
export const SLIDE_COLOURS: Readonly<Record<string, string>> = { paper: '#ffffff', ink: '#16191c', vermillion: '#d55e00', ...LIGHT_TINTS };

/** For a picture made of dots: the same rules with their colours written out, since what draws such pictures reads no tokens. */
export const SLIDE_STYLE = RULES.join('').replace(/var\(--(\w+)\)/g, (_, name: string) => SLIDE_COLOURS[name] ?? name);
