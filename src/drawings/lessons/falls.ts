/** What the lesson on falls is about: the parts of a fall, and why the top piece bears two pulls. */
import { halfTurn, upright } from '../curves/bends.ts';
import type { Point } from '../curves/point.ts';
import type { Drawing } from '../drawing.ts';
import { connector, gate, load } from '../parts/connector.ts';
import { move } from '../parts/move.ts';
import type { Mark, Strand } from '../scene.ts';

const label = (x: number, y: number, text: string, anchor: 'start' | 'end' = 'start'): Mark => ({ mark: 'label', at: [x, y], text, anchor });

/** A person whose knot or belay device is at a place: head, arms, body and legs. @param after whether it is drawn dashed, as after the fall */
function person([x, y]: Point, after = false): Mark {
  return { mark: 'path', class: after ? 'move' : 'arrow', d: `M${x - 6} ${y - 27}a6 6 0 1 0 12 0a6 6 0 1 0 -12 0M${x} ${y - 20}V${y + 3}l-8 20m8-20l8 20M${x - 13} ${y - 6}l13-9l13 9` };
}

/** A length beside the drawing: a line with an end at each place. */
const length = (x: number, from: number, to: number): Mark => ({ mark: 'path', class: 'thin', d: `M${x - 5} ${from}h10M${x} ${from}V${to}M${x - 5} ${to}h10` });

const ROPE_X = 150;
/** Heights: the climber, the top piece, as far below it, that and the slack, the belayer. */
const [CLIMBER, PIECE, AS_FAR, TIGHT, BELAY] = [70, 190, 310, 344, 470] as const;

/** Where the rope comes tight: from there on it stretches, which is not free fall. */
function fall(): Drawing {
  const rope: Strand = { name: 'rope', kind: 'cord', closed: false, goesOn: true, points: upright(ROPE_X, BELAY, CLIMBER), says: '' };
  return {
    method: 'lessons', frame: 'fall', name: 'The parts of a fall',
    caption: 'The free fall is the height above the piece, as far again, and the slack. Over all the rope that is out it gives the fall factor.',
    alt: 'A climber above the top piece, a belayer below, and the rope between them through the piece. Beside it the free fall in three parts: down to the piece, as far again, and the slack.',
    scene: {
      height: 520, strands: [rope],
      above: [
        { mark: 'path', class: 'solid', d: `M${ROPE_X - 8} ${PIECE}a8 8 0 1 0 16 0a8 8 0 1 0 -16 0` },
        { mark: 'path', class: 'move', d: `M${ROPE_X + 7} ${PIECE + 4}L${ROPE_X + 36} ${TIGHT - 30}` },
        person([ROPE_X, CLIMBER - 4]), person([ROPE_X, BELAY + 8]), person([ROPE_X + 36, TIGHT], true),
        length(220, CLIMBER, PIECE), length(220, PIECE, AS_FAR), length(220, AS_FAR, TIGHT), length(66, CLIMBER, BELAY),
        label(230, (CLIMBER + PIECE) / 2, 'above'), label(230, (CLIMBER + PIECE) / 2 + 16, 'the piece'),
        label(230, (PIECE + AS_FAR) / 2 + 5, 'as far again'), label(230, (AS_FAR + TIGHT) / 2 + 5, 'slack'),
        label(56, (CLIMBER + BELAY) / 2, 'rope', 'end'), label(56, (CLIMBER + BELAY) / 2 + 16, 'out', 'end'),
        label(130, PIECE + 5, 'piece', 'end'),
      ],
    },
  };
}

const RING: Point = [160, 92];

function topPiece(): Drawing {
  const sling: Strand = { name: 'sling', kind: 'broad-tape', closed: false, goesOn: true, points: [...upright(150, 8, 106), ...halfTurn(150, 170, 106, false).slice(1, -1), ...upright(170, 106, 8)], says: 'ou' };
  const rope: Strand = { name: 'rope', kind: 'cord', closed: false, goesOn: true, points: [...upright(150, 330, 178), ...halfTurn(150, 170, 178, true).slice(1, -1), ...upright(170, 178, 330)], says: 'ou' };
  return {
    method: 'lessons', frame: 'top-piece', name: 'The top piece',
    caption: 'The rope turns round at the top piece. Both of its sides pull down, and the piece bears the two together.',
    alt: 'A connector hangs from a sling, and a rope turns over its lower bar. On the left an arrow pulls down at the climber, on the right one at the belay. Both arrows together pull at the piece.',
    scene: {
      height: 400, strands: [sling, connector(RING, 'uuoo'), rope],
      above: [
        gate(RING), ...load([150, 336], 34), ...load([170, 336], 34),
        label(138, 356, 'climber', 'end'), label(184, 356, 'belay'),
        ...move('M232 104v80', [232, 190], [0, 1]), ...move('M246 104v80', [246, 190], [0, 1]),
        label(258, 142, 'piece:'), label(258, 158, 'both'),
      ],
    },
  };
}

/** Both drawings. */
export const fallLesson = (): Drawing[] => [fall(), topPiece()];
