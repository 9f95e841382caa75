/**
 * The style of all drawings. Within a page they take its tokens; as files of their own they bring the same colours for
 * light and dark. Colours are ink, blue and vermillion; what matters is told by shape and word as well.
 */

/** Classes of strokes, fills and letters. Lengths are drawing units. */
const RULES = [
  '.d path{fill:none;stroke-linejoin:round}',
  '.d .g{stroke:var(--paper)}',
  '.d .te{stroke:var(--blue)}',
  '.d .tf{stroke:var(--tape)}',
  '.d .in{stroke:var(--blue);stroke-dasharray:4 3}',
  '.d .ie{stroke:var(--ink)}',
  '.d .lf,.d .pf{stroke:var(--paper)}',
  '.d .mf{stroke:var(--metal)}',
  '.d .thin{stroke:var(--ink);stroke-width:1.5}',
  '.d .solid{stroke:var(--ink);stroke-width:1.5;fill:var(--paper)}',
  '.d .metal{stroke:var(--ink);stroke-width:1.5;fill:var(--metal)}',
  '.d .ink{fill:var(--ink)}',
  '.d .arrow{stroke:var(--ink);stroke-width:2.5}',
  '.d .seam{stroke:var(--ink);stroke-width:1.2}',
  '.d .dash{stroke:var(--blue);stroke-width:1.5;stroke-dasharray:4 3}',
  '.d .move{stroke:var(--ink);stroke-width:2;stroke-dasharray:5 3}',
  '.d .bad{stroke:var(--vermillion);stroke-width:4}',
  '.d .run{stroke:var(--vermillion);stroke-width:2.5;stroke-dasharray:6 4}',
  '.d .runhead{fill:var(--vermillion)}',
  '.d text{font:13px/1 system-ui,sans-serif;fill:var(--ink)}',
];

const FORCED = '@media(forced-colors:active){.d{--paper:Canvas;--ink:CanvasText;--blue:CanvasText;--vermillion:CanvasText;--tape:Canvas;--metal:Canvas;forced-color-adjust:none}}';

/** For a page that has the tokens paper, ink, blue and vermillion. */
export const PAGE_STYLE = [
  '.d{--tape:color-mix(in srgb,var(--blue) 22%,var(--paper));--metal:color-mix(in srgb,var(--ink) 18%,var(--paper));display:block;width:100%;max-width:20rem;height:auto}',
  ...RULES, FORCED,
].join('\n');

/** For a file of its own: the same, with its own colours. Print is always light. */
export const FILE_STYLE = [
  '.d{--paper:#fcfcfa;--ink:#16191c;--blue:#0072b2;--vermillion:#d55e00;--tape:#c4deea;--metal:#d2d3d3;background:var(--paper)}',
  '@media screen and (prefers-color-scheme:dark){.d{--paper:#121518;--ink:#e9ecee;--blue:#3b9bd4;--vermillion:#e8702a;--tape:#14384d;--metal:#3a3f43}}',
  FORCED, ...RULES,
].join('');
