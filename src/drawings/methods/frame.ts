/** What all drawings of a method share: the device above, the sling in its eye, a connector and the load below. */
import type { Point } from '../curves/point.ts';
import { CONNECTOR_HEIGHT, connector, gate, load } from '../parts/connector.ts';
import { DEVICE, FERRULE } from '../parts/device.ts';
import { eye, type EyeKind } from '../parts/eye.ts';
import type { Mark, Scene, Strand } from '../scene.ts';

/** A connector in a drawing: where, and its crossings; with the load or without. */
export interface Clip { at: Point; says: string }

/** What a drawing adds to the device. */
export interface Rig {
  eye: EyeKind;
  /** The eye's crossings, left to right. */
  eyeSays: string;
  slings: readonly Strand[];
  clip?: Clip;
  height: number;
  above?: readonly Mark[];
}

/** The drawing of a rig. */
export function rigged({ eye: kind, eyeSays, slings, clip, height, above = [] }: Rig): Scene {
  const clipped = clip ? [connector(clip.at, clip.says)] : [];
  const hung = clip ? [gate(clip.at), ...load([clip.at[0], clip.at[1] + CONNECTOR_HEIGHT + 8])] : [];
  return { height, below: DEVICE, strands: [...eye(kind, eyeSays), ...slings, ...clipped], above: [...FERRULE, ...hung, ...above] };
}
