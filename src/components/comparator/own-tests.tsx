/** A reader's own tests beside the published figures: never ranked, and only for the rig that was pulled. */
import type { OwnAnswer } from '../../break-tests/own-answer.ts';
import type { OwnTests } from '../../links/own-tests-link.ts';
import type { Comparison, Row } from '../../strength/types.ts';
import { aboutOfTwenty, countAbove, line, lowAndMiddle, pairShort } from '../../strength/wording.ts';
import { Axis, lane } from './lane.tsx';
import type { Frame } from './setup.ts';
import { EYE_NAMES } from './words.ts';

interface Props {
  tests: OwnTests;
  answer: OwnAnswer;
  comparison: Comparison;
  frame: Frame;
  /** What the scatter of few pulls is taken from. */
  classWords: string;
  rigToRig: { sd: number; figure: string };
}

const counted = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

/** What was pulled, in a line. */
export function pulledWords({ method, sling, eye, bearingMm }: OwnTests, { methods, slings }: Pick<Frame['evidence'], 'methods' | 'slings'>): string {
  return `${methods[method]?.name}, ${slings[sling]?.name}, ${EYE_NAMES[eye]}${bearingMm === null ? ', not measured' : ` of ${bearingMm} mm`}`;
}

/** What the published figures say of the same method. */
function publishedWords(row: Row | undefined, unit: Frame['unit']): string {
  if (!row?.attachment) return 'Published figures alone give no number for this method on this rig.';
  return `By published figures alone, for anybody’s rig: ${lowAndMiddle(row.attachment, unit)}.`;
}

export function OwnTestsRow({ tests, answer, comparison, frame, classWords, rigToRig }: Props) {
  const { own, spread, dots } = answer;
  const { unit, demandKn, ratingKn } = frame;
  const count = demandKn ?? ratingKn;
  const row = comparison.rows.find(({ method }) => method === tests.method);
  const drawn = { ...(row as Row), dots: [...dots], ticks: [{ figure: '', kn: [...tests.broken] }] } as Row;
  // The maker's way stands outside all of this: no home method is called stronger than it.
  const others = comparison.rows.filter((one) => one.dots.length === dots.length && frame.evidence.methods[one.method]?.role === 'home');
  const n = tests.broken.length;
  return (
    <>
      <p><b data-input>{pulledWords(tests, frame.evidence)}</b>, <span data-input>{counted(n + tests.atLeast.length, 'pull')}{tests.atLeast.length > 0 && `, ${tests.atLeast.length} of them lower limits`}</span>. Your own numbers: nobody has checked them, and they are not ranked.</p>
      <Axis frame={frame} />
      {lane(drawn, frame)}
      <p data-input>{count !== null && <><b>Of 20 rigs that you build like this, {aboutOfTwenty(countAbove(dots, count))} would break above {line(count, unit)} in one slow pull, new and dry.</b> </>}{lowAndMiddle(spread, unit)}. That is no minimum and no working load.</p>
      {row?.state === 'apart' && <p><b>Set apart all the same:</b> {row.reasons.join(' ')}</p>}
      {row && <p><b>One clipping error:</b> {row.oneClipError.what}</p>}
      <p data-input>{publishedWords(row, unit)}</p>
      <ul>
        <li data-input>{own.scatterFrom === 'series' ? `The scatter is that of your ${n} breaks, widened because so few cannot show it well.` : `${n < 5 ? 'Fewer than five breaks show no scatter of their own' : 'Your breaks scatter less than this class does'}: it is that of ${classWords}.`}</li>
        {tests.oneRig && <li>All pulls were on one rig. What the next one adds is <a href={`${frame.base}figures/${rigToRig.figure}/`}>assumed</a>: <span data-input>{rigToRig.sd}</span>.</li>}
        {own.understated && <li>All slings were of one lot. Others may scatter more, so this spread is understated.</li>}
        <li>The spread between laboratories is left out, since rig and machine are your own. For anybody else’s rig it counts.</li>
      </ul>
      {others.length > 0 && (
        <details>
          <summary>Against each home method that has a number</summary>
          <ul data-input>{others.map((one) => <li key={one.method}>{one.name}: {pairShort(answer.beats(one.dots))}</li>)}</ul>
        </details>
      )}
    </>
  );
}
