/** Signs that say right or wrong by shape and by word. */
import type { Mark } from '../scene.ts';

/** A cross in a ring, and in words what is wrong. @param y height of the line */
export function wrong(y: number, words: string): Mark[] {
  return [
    { mark: 'path', class: 'bad', d: `M13 ${y - 10}l11 11m0-11l-11 11` },
    { mark: 'label', at: [33, y], text: `wrong: ${words}` },
  ];
}

/** A tick, and the word. */
export function right(y: number): Mark[] {
  return [
    { mark: 'path', class: 'arrow', d: `M12 ${y - 5}l5 5 9-11` },
    { mark: 'label', at: [33, y], text: 'right' },
  ];
}

/** Words alone, for a method that is shown without being advised. */
export const plain = (y: number, text: string): Mark => ({ mark: 'label', at: [12, y], text });
