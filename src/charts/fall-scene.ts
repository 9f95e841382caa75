/**
 * A fall to scale: where belayer, pieces and climber are, in drawing units, from lengths of rope. Seen from the front. All
 * lengths of rope and all heights have one scale; how far the climber hangs beside the rope has none.
 */

/** A fall as its lengths. */
export interface FallLengths {
  /** Lengths of rope between the turns when the rope comes tight, m, the climber's first; one alone where nothing is clipped. */
  segmentsM: readonly number[];
  /** How far the rope turns below the top piece, degrees, from the top down: two fewer than segments. */
  turnsDeg: readonly number[];
  /** Climber above the piece, or above the belay where there is none; slack; m. */
  aboveM: number;
  slackM: number;
  /** How much farther than the fall the climber goes: stretch, and rope that ran through the belay; m. */
  stretchM: number;
  slipM: number;
}

/** A place on the drawing, x to the right and y down. */
export interface Place { x: number; y: number }
/** A part of the way down, from one height to a lower one, in drawing units. */
export interface Span { name: 'fall' | 'stretch' | 'slip'; from: number; to: number }

export interface FallScene {
  width: number;
  height: number;
  /** Drawing units of a metre. */
  scale: number;
  /** The rope from the belayer up to the top piece; only the belayer where nothing is clipped. */
  rope: Place[];
  belayer: Place;
  /** Top piece first, then those below it; none where nothing is clipped. */
  pieces: Place[];
  /** The knot at the harness before the fall, and at its lowest. */
  before: Place;
  after: Place;
  /** Free fall, stretch and slip, from the top down; those of no length are left out. */
  spans: Span[];
  /** A bar of a round length, for the eye. */
  bar: { metres: number; length: number };
  /** How far the lowest place is below the belayer, m; 0 or less where it is not. */
  belowBelayM: number;
}

export const SCENE_WIDTH = 360;
/** Room of the lengths; the people need some above and below. */
const [TALL, WIDE, ABOVE, BELOW] = [330, 96, 34, 44];
/** Middle of the rope, and how far beside the top piece the climber hangs. */
const MIDDLE = 158;
export const BESIDE = 34;
const ROUND = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50];

/** The rope below the top piece in metres, belayer at 0, top piece straight above; it turns to one side and the other. */
function wayUp(segmentsM: readonly number[], turnsDeg: readonly number[]): Place[] {
  const lengths = segmentsM.slice(1).toReversed();
  const turns = turnsDeg.toReversed();
  let heading = 0;
  const way: Place[] = [{ x: 0, y: 0 }];
  for (const [i, length] of lengths.entries()) {
    if (i > 0) heading += ((i % 2 === 0 ? 1 : -1) * (turns[i - 1] as number) * Math.PI) / 180;
    const { x, y } = way.at(-1) as Place;
    way.push({ x: x + length * Math.sin(heading), y: y + length * Math.cos(heading) });
  }
  // Turned as a whole until the top piece is above the belayer: lengths and turns stay.
  const top = way.at(-1) as Place;
  const high = Math.hypot(top.x, top.y);
  if (high === 0) return way;
  const [sin, cos] = [top.x / high, top.y / high];
  return way.map(({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos }));
}

/**
 * Lays a fall out.
 * @throws RangeError when a length is below 0 or none is above 0, or turns and segments do not go together
 */
export function fallScene({ segmentsM, turnsDeg, aboveM, slackM, stretchM, slipM }: FallLengths): FallScene {
  if (turnsDeg.length !== Math.max(0, segmentsM.length - 2)) throw new RangeError(`turnsDeg must hold two fewer than segmentsM (got ${turnsDeg.length} and ${segmentsM.length}).`);
  const segments = segmentsM.map((length, i): [string, number] => [`segmentsM[${i}]`, length]);
  for (const [name, length] of [...Object.entries({ aboveM, slackM, stretchM, slipM }), ...segments]) if (!(length >= 0 && length < Infinity)) throw new RangeError(`${name} must be 0 or more (got ${length}).`);
  const way = wayUp(segmentsM, turnsDeg);
  const stop = (way.at(-1) as Place).y;
  const before = stop + aboveM;
  const tight = stop - aboveM - slackM;
  const stretched = tight - stretchM;
  const lowest = stretched - slipM;
  const [top, bottom] = [Math.max(before, stop), Math.min(0, lowest)];
  const xs = way.map(({ x }) => x);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  if (!(top > bottom)) throw new RangeError('segmentsM must not all be 0.');
  const scale = Math.min(TALL / (top - bottom), right > left ? WIDE / (right - left) : Infinity);
  const y = (metres: number): number => ABOVE + (top - metres) * scale;
  const at = (one: Place): Place => ({ x: MIDDLE + (one.x - 0.5 * (left + right)) * scale, y: y(one.y) });
  const rope = way.map(at);
  const stopAt = rope.at(-1) as Place;
  const metres = ROUND.findLast((one) => one * scale <= 70) ?? 0.1;
  const spans: Span[] = [
    { name: 'fall', from: y(before), to: y(tight) },
    { name: 'stretch', from: y(tight), to: y(stretched) },
    { name: 'slip', from: y(stretched), to: y(lowest) },
  ];
  return {
    width: SCENE_WIDTH,
    height: ABOVE + (top - bottom) * scale + BELOW,
    scale,
    rope,
    belayer: rope[0] as Place,
    pieces: segmentsM.length > 1 ? rope.slice(1).toReversed() : [],
    before: { x: stopAt.x, y: y(before) },
    after: { x: stopAt.x + BESIDE, y: y(lowest) },
    spans: spans.filter(({ from, to }) => to > from),
    bar: { metres, length: metres * scale },
    belowBelayM: -lowest,
  };
}

/**
 * Moves labels apart that would stand on one another, each as little as can be.
 * @param wanted heights in drawing units, from the top down
 * @param distance least distance between two
 * @param last lowest height that a label may have
 */
export function apart(wanted: readonly number[], distance: number, last: number): number[] {
  const placed: number[] = [];
  for (const [i, one] of wanted.entries()) placed.push(i === 0 ? one : Math.max(one, (placed[i - 1] as number) + distance));
  for (let i = placed.length - 1, most = last; i >= 0; i--, most -= distance) placed[i] = Math.min(placed[i] as number, most);
  return placed;
}
