/** A part of the page that is drawn again only when something that it shows has changed. */
import { Component, type ComponentChild } from 'preact';

interface Props {
  /** All that the part shows and that can change, as values that `===` tells apart; as many each time. */
  of: readonly unknown[];
  /** Draws the part. It may read what is in `of`, and what never changes. */
  children: () => ComponentChild;
}

/** Keeps what it drew while `of` stays the same. The markup is that of its child alone. */
export class Kept extends Component<Props> {
  override shouldComponentUpdate({ of }: Props): boolean {
    return of.some((value, i) => value !== this.props.of[i]);
  }

  override render({ children }: Props): ComponentChild {
    return children();
  }
}
