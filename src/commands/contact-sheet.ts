/**
 * Every drawing on one page, for those who draw: as on a phone and as on a desk, light, dark and grey. Not part of the site.
 * Use: node src/commands/contact-sheet.ts <folder>
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { allDrawings } from '../drawings/drawings.ts';
import { DARK, PAGE_STYLE } from '../drawings/style.ts';
import { fileSvg, inlineSvg } from '../drawings/svg.ts';

/** The site's tokens, light and dark, as the pages have them. */
const STYLE = `
.light{--paper:#fcfcfa;--ink:#16191c;--vermillion:#d55e00}
.dark{--paper:#121518;--ink:#e9ecee;--vermillion:#d55e00}
.light,.dark{background:var(--paper);color:var(--ink);padding:8px}
.grey{filter:grayscale(1)}
body{margin:0;font:14px/1.4 system-ui,sans-serif}
section{border-bottom:1px solid #888}
h2{margin:8px;font-size:16px}
p{margin:0 8px 4px;max-width:60rem}
.row{display:flex;flex-wrap:wrap;align-items:flex-start}
.phone{width:288px}.desk{width:400px}.desk .d{max-width:none}
${PAGE_STYLE}
.dark .d{${DARK}}`;

const [folder] = process.argv.slice(2);
if (!folder) {
  console.error('contact-sheet: names no folder. Say where to write: node src/commands/contact-sheet.ts <folder>');
  process.exit(1);
}

const sections = allDrawings().map(({ method, frame, caption, alt, scene }) => {
  const svg = inlineSvg(scene, alt);
  const size = gzipSync(fileSvg(scene, alt)).length;
  const shown = [['light phone'], ['dark phone'], ['light phone grey'], ['light desk'], ['dark desk']].map(([name]) => `<div class="${name}">${svg}</div>`).join('');
  return `<section id="${method}-${frame}"><h2>${method}, ${frame} (${size} bytes)</h2><p>${caption}</p><p>${alt}</p><div class="row">${shown}</div></section>`;
});

mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, 'index.html'), `<!doctype html><html lang="en"><meta charset="utf-8"><title>Drawings</title><style>${STYLE}</style>${sections.join('\n')}</html>\n`);
console.log(`${join(folder, 'index.html')}: ${sections.length} drawings.`);
