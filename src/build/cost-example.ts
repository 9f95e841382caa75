/** The worked example of costs: the outing club of a fictional university. Every price in it is invented. */
import { parseCostLink } from '../links/cost-link.ts';
import { type CostAnswer, type CostCurves, answerOn, costCurves, offersSideBySide } from '../replacement/answer.ts';
import { type CostAsked, GENERAL_KEYS, MOST_KINDS, OFFER_FIELDS, readCost, WAYS } from '../replacement/read-words.ts';

/** The example as a link: what the button of the page fills in. */
export const EXAMPLE_LINK = 'v=1&week=1&metal=8&kinds=5~2&names=camming%20devices~old%20nuts&fresh=~20&refused=~mw&m=16~9~9~4~10&w=12~14~14~5~8~3~10~10&n=27~0~6~0~10&h=7~0~4~1~5';

export interface CostExample { asked: CostAsked; answer: CostAnswer; curves: CostCurves }

/** The example, computed by the engine when the page is built. */
export function costExample(): CostExample {
  const { words } = parseCostLink(EXAMPLE_LINK, { general: GENERAL_KEYS, offers: OFFER_FIELDS, ways: WAYS, mostKinds: MOST_KINDS });
  if (!words) throw new RangeError('EXAMPLE_LINK must say something');
  const asked = readCost(words);
  return { asked, answer: answerOn(asked), curves: costCurves(offersSideBySide(asked), 0) };
}
