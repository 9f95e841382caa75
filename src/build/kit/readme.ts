/** The README of the course kit, as plain text: what is in the folder, how to open it, licence, credit and citation. */
import { citationText } from '../downloads/citation.ts';
import { downloads } from '../downloads/all-files.ts';
import { MAKER_FIRST } from '../downloads/readme.ts';
import { kitCitable } from '../citing/citations.ts';
import { siteLessons } from '../lessons.ts';
import { address } from '../site.ts';
import { authorDate } from '../../citing/text-author-date.ts';

/** Text with lines as long as they come; a reader's window breaks them. */
export function kitReadme(): string {
  const { release, citation } = downloads();
  const own = kitCitable().own;
  return [
    own.title,
    `Evidence ${release.version}, frozen on ${release.day}.${release.version.endsWith('+') ? ' The plus sign says that records changed since then.' : ''} Newest kit: ${own.url}`,
    `${MAKER_FIRST} Local law decides. Nothing here teaches anybody to climb, or replaces a course. What was pulled in a test is never climbed on.`,
    'HOW TO OPEN IT\nUnpack the whole archive into a folder. Open index.html in a browser. No network is needed: nothing here runs a script or asks for anything. Links to figures, terms and sources lead to the site, and need a network.',
    [
      'WHAT IS IN IT', 'index.html: lessons by level and by time, and ready-made plans', 'lessons/: the plan of each lesson, with its drawings', 'handouts/: one sheet a lesson, for A4 and for Letter',
      'variants/: thirty settings of each exercise, one a student', "answers/: for the teacher", 'drawings/: every drawing as SVG, and as PNG with its words beside it for slides', 'cite/: the citation as BibTeX, RIS and CSL-JSON', 'LICENSE.txt: the licences in full',
    ].join('\n'),
    `LESSONS\n${siteLessons().map(({ title, minutes, says }) => `${title} (${minutes} min): ${says}`).join('\n')}`,
    `LICENCE AND CREDIT\nText, handouts, drawings and data: CC BY 4.0, https://creativecommons.org/licenses/by/4.0/ Name Second Sling, link ${own.url}, and say what you changed. Code: MIT.`,
    `HOW TO CITE\n${citation.message}\n${authorDate(own)}\nThe whole project: ${citationText(citation, release)}`,
    `Report an error: ${address('/about/#errors')}`,
  ].join('\n\n').concat('\n');
}
