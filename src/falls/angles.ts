/** Loads in spread slings: plain geometry, equal legs, nothing that gives. Angles in degrees. */

const RADIANS = Math.PI / 180;

function assertAngle(value: number, name: string, most: number): void {
  if (!(value >= 0 && value < most)) throw new RangeError(`${name} must be from 0 to below ${most} (got ${value}).`);
}

/** Pull in each of two legs as a share of the load: 1 / (2 cos(half the angle between them)). */
export function legShare(betweenDeg: number): number {
  assertAngle(betweenDeg, 'betweenDeg', 180);
  return 1 / (2 * Math.cos(0.5 * betweenDeg * RADIANS));
}

/** Pull in a leg over its share of a straight load, by the leg's angle from the horizontal: 1 / sin. */
export function legOverStraight(fromHorizontalDeg: number): number {
  if (!(fromHorizontalDeg > 0 && fromHorizontalDeg <= 90)) throw new RangeError(`fromHorizontalDeg must be above 0 and at most 90 (got ${fromHorizontalDeg}).`);
  return 1 / Math.sin(fromHorizontalDeg * RADIANS);
}

/** Load on each anchor of a sling threaded through both as a triangle, as a share of the load: 1 / (2 sin((180 - angle) / 4)). */
export function triangleAnchorShare(betweenDeg: number): number {
  assertAngle(betweenDeg, 'betweenDeg', 180);
  return 1 / (2 * Math.sin(0.25 * (180 - betweenDeg) * RADIANS));
}
