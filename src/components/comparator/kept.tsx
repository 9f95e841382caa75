/** A part of the page that is drawn again only when something that it shows has changed. */
import { Component, type ComponentChild } from 'preact';

interface Props {
  /** All that the part shows and that can change, as values that `===` tells apart. */
  of: readonly unknown[];
  /** Draws the part. It may read what is in `of`, and what never changes. */
  children: () => ComponentChild;
}

/** Keeps what it drew while `of` stays the same. The markup is that of its child alone. */
export class Kept extends Component<Props> {
  override shouldComponentUpdate({ of }: Props): boolean {
    const before = this.props.of;
    return of.length !== before.length || of.some((value, i) => value !== before[i]);
  }

  override render({ children }: Props): ComponentChild {
    return children();
  }
}
