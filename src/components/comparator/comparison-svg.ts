/**
 * A comparison as one picture that needs nothing beside it: the finding as its title, the rig, each row with its
 * drawing as the page has it, the caution and the link. Its own style, in light colours; every mark has a shape too.
 */
import { aboveShort, CAUTION_LINE, certaintyWords, GROUP_HEADINGS, GROUP_ORDER, LETTERS, lowAndMiddle, MAKER_FIRST_LINE, partName, rowsOf, shownSpread } from '../../strength/wording.ts';
import type { Shown } from './taken-away.ts';
import { rigLine } from './words.ts';

const STYLE = 'svg{overflow:visible}text{font:14px system-ui,sans-serif;fill:#16191c}.b{font-weight:700}.t{font-size:18px}path{fill:none;stroke:#16191c;stroke-width:2.5}' +
  '.base,.cells{stroke:#a3a8ab;stroke-width:1.5}.demand{stroke-dasharray:7 4}.upper{stroke:none}' +
  '.lane .dots{stroke:#0072b2;stroke-linecap:round;stroke-width:11}.lane .below{stroke:#d55e00}.lane .hole{stroke:#fff;stroke-width:7}' +
  '[class^=kind]{fill:#16191c;fill-rule:evenodd;stroke:none}.kind-S{fill:#0072b2}.kind-K{fill:#d55e00}' +
  '.letters{stroke-width:2}.lane text,.axis text{font-size:22px}.axis text{text-anchor:middle}' +
  '.axis .first,.axis .to-right{text-anchor:start}.axis .last,.axis .to-left,.lane .beyond{text-anchor:end}';

const LEFT = 20;
/** Where the drawings begin, and how large they are of their own size. */
const DRAWN = 300;
const SCALE = 0.8;

/** Text for XML. */
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** The picture, 800 wide. */
export function comparisonSvg({ comparison, unit, sort, slings, link, drawn }: Shown): string {
  const { rig } = comparison;
  const counted = rig.demandKn ?? rig.ratingKn;
  const parts: string[] = [];
  let y = 16;
  /** Writes text at `y` and below, broken between words. */
  const write = (text: string | null, letters = 92, name = '', x = LEFT): void => {
    for (const line of text?.match(new RegExp(`.{1,${letters}}(?:\\s|$)|.{${letters}}`, 'g')) ?? []) {
      y += 18;
      parts.push(`<text x="${x}" y="${y}" class="${name}">${escaped(line.trim())}</text>`);
    }
  };
  /** Puts drawings of the page at `y`, one below the other. */
  const draw = (drawings: readonly string[]): void => {
    for (const one of drawings) {
      const height = Number(/ 600 (\d+)/.exec(one)?.[1]) * SCALE;
      parts.push(one.replace('<svg', `<svg x="${DRAWN}" y="${y}" width="${600 * SCALE}" height="${height}"`));
      y += height + 2;
    }
  };
  /** Two columns: what is written at the left, and what stands at the right. */
  const beside = (left: () => void, right: () => void): void => {
    const top = y;
    left();
    const end = y;
    y = top;
    right();
    y = Math.max(y, end) + 10;
  };

  write(comparison.summary, 64, 'b t');
  write(`Rig: ${rigLine(rig, slings)}`);
  write(`WARNING: ${MAKER_FIRST_LINE}`);
  for (const group of GROUP_ORDER) {
    const rows = rowsOf(comparison, group, sort).filter(({ dots }) => dots.length > 0);
    if (rows.length === 0) continue;
    y += 14;
    beside(() => write(GROUP_HEADINGS[group], 30, 'b'), () => draw(drawn(null)));
    for (const row of rows) {
      write(`${row.place === undefined ? '' : `${row.place}. `}${row.name}`, 90, 'b');
      write(row.reasons.join(' '));
      const spread = shownSpread(row, rig);
      beside(() => {
        write(spread && lowAndMiddle(spread, unit), 40);
        write(certaintyWords(row));
      }, () => {
        write(counted === null ? null : aboveShort(row, counted, unit), 60, '', DRAWN);
        y += 6;
        draw(drawn(row.method));
      });
    }
  }
  y += 10;
  write(`Each dot is one rig of 20, filled above the line and open below it. What breaks first: ${LETTERS.map((letter) => `${letter} ${partName(letter)}`).join(', ')}. Methods without a number are left out.`);
  write(CAUTION_LINE, 80, 'b');
  write(`Evidence ${comparison.evidence}, model ${comparison.model}.`);
  write(link, 80);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 800 ${y + 20}" width="800"><title>${escaped(comparison.summary)}</title><style>${STYLE}</style><rect width="800" height="${y + 20}" fill="#fff"/>${parts.join('')}</svg>`;
}
