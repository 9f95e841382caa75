/** What the lessons on tests and bounds are about: where few and many pulls put a bound, and what is read off five pulls. */
import type { Drawing } from '../drawing.ts';
import type { Mark } from '../scene.ts';

type Side = 'start' | 'middle' | 'end';
const label = (x: number, y: number, text: string, anchor: Side = 'middle'): Mark => ({ mark: 'label', at: [x, y], text, anchor });

/** The axis of force, from none on. */
const axis = (y: number): Mark[] => [{ mark: 'path', class: 'thin', d: `M24 ${y}H296M24 ${y - 5}v10` }, { mark: 'path', class: 'solid', d: `M296 ${y - 4}l9 4l-9 4z` }];

/** Pulls as dots above the axis, each as low as those beside it let it lie. */
function pulls(places: readonly number[], y: number): Mark[] {
  const laid: [number, number][] = [];
  return places.map((x) => {
    let level = 0;
    while (laid.some(([other, height]) => height === level && Math.abs(other - x) < 9)) level++;
    laid.push([x, level]);
    return { mark: 'path', class: 'solid', d: `M${x - 4} ${y - 9 - 9 * level}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0` };
  });
}

/** A place on the axis that is worked out from the pulls: a line across it. */
const across = (x: number, y: number, up = 34): Mark => ({ mark: 'path', class: 'thin', d: `M${x} ${y - up}V${y + 10}` });

const FIVE = [158, 186, 204, 214, 248];
const TWENTY = [140, 158, 166, 174, 180, 186, 190, 194, 199, 202, 204, 208, 212, 216, 221, 226, 232, 240, 248, 262];
const meanOf = (places: readonly number[]): number => Math.round(places.reduce((sum, x) => sum + x, 0) / places.length);
const sdOf = (places: readonly number[]): number => Math.sqrt(places.reduce((sum, x) => sum + (x - meanOf(places)) ** 2, 0) / (places.length - 1));
/** Standard deviations below the mean at which 95 of 100 lie above, 95 % sure: Krishnamoorthy and Mathew, Statistical Tolerance Regions, table B1. */
const [K_OF_FIVE, K_OF_TWENTY] = [4.203, 2.396] as const;

function fewAndMany(): Drawing {
  const [few, many] = [110, 250] as const;
  const ofFive = Math.round(meanOf(FIVE) - K_OF_FIVE * sdOf(FIVE));
  const ofTwenty = Math.round(meanOf(TWENTY) - K_OF_TWENTY * sdOf(TWENTY));
  return {
    method: 'lessons', frame: 'few-and-many', name: 'Few pulls and many',
    caption: 'With few pulls the bound lies far below them. With many it comes nearer to the mean, while the lowest pull goes down. Drawn, not measured.',
    alt: 'Two axes of force. Above, five pulls as dots, and a bound far to their left. Below, twenty pulls as dots, the lowest further left than before, and a bound that lies nearer to them.',
    scene: {
      height: 320, strands: [],
      above: [
        ...axis(few), ...pulls(FIVE, few), across(ofFive, few), label(ofFive, few + 26, 'bound'), across(meanOf(FIVE), few), label(meanOf(FIVE), few + 26, 'mean'), label(24, few - 56, 'five pulls', 'start'),
        ...axis(many), ...pulls(TWENTY, many), across(ofTwenty, many), label(ofTwenty, many + 26, 'bound'), across(meanOf(TWENTY), many), label(meanOf(TWENTY), many + 26, 'mean'), label(24, many - 56, 'twenty pulls', 'start'),
        label(300, many + 46, 'force', 'end'),
      ],
    },
  };
}

function readOff(): Drawing {
  const y = 150;
  const mean = meanOf(FIVE);
  const threeDown = Math.round(mean - 3 * sdOf(FIVE));
  return {
    method: 'lessons', frame: 'read-off', name: 'What is read off five pulls',
    caption: 'Minimum, mean, and the mean less three standard deviations are read off the same pulls. None of them says how many further pieces break above it; a bound does, and says how surely. Drawn, not measured.',
    alt: 'An axis of force with five pulls as dots. The lowest is marked as the minimum, a line among them as the mean, and a line far to their left as the mean less three standard deviations.',
    scene: {
      height: 220, strands: [],
      above: [
        ...axis(y), ...pulls(FIVE, y), across(mean, y, 40), label(mean - 8, y - 50, 'mean', 'start'),
        across(FIVE[0] as number, y, 40), label((FIVE[0] as number) + 12, y - 50, 'minimum', 'end'),
        across(threeDown, y, 40), label(threeDown, y + 28, 'mean less three'), label(threeDown, y + 44, 'standard deviations'),
        label(300, y + 20, 'force', 'end'),
      ],
    },
  };
}

/** Both drawings. */
export const pullLessons = (): Drawing[] => [fewAndMany(), readOff()];
