/**
 * The form of the comparator in the browser. It keeps the rig as the words of its fields, reads links and fields by
 * one parser, lets the address follow, and asks for the answer. It knows nothing of the engine, which comes later.
 */
import { Component } from 'preact';
import type { Off, Words } from '../components/comparator/form.tsx';
import { type Faults, isNumberKey, rigOf, wordsOf } from '../components/comparator/form-words.ts';
import { type Origin, RigPanel } from '../components/comparator/rig-panel.tsx';
import type { Setup } from '../components/comparator/setup.ts';
import { rigLine } from '../components/comparator/words.ts';
import { type ParsedLink, parseLink } from '../links/parse-link.ts';
import { parsePath } from '../links/prebuilt-path.ts';
import { RIG_KEYS, type RigKey } from '../links/rig-keys.ts';
import { serialiseLink } from '../links/serialise-link.ts';
import type { Rig } from '../strength/types.ts';

/** What the form asks: a rig, and the link that it was read from, if it was. */
export interface Question { rig: Rig; link: ParsedLink | null }

interface Props { setup: Setup; ask: (question: Question) => void }
interface State { words: Words; off: Off; faults: Faults; rig: Rig; origin: Origin; isFolded: boolean }

/** Pause after the last key before the address follows, ms: short enough to copy the address, long enough not to flood it. */
const ADDRESS_PAUSE = 300;

/** The form with its state. */
export class ComparatorRig extends Component<Props, State> {
  private readonly slings: readonly string[];
  /** Input that the newest entry of the history stands for: a run of edits to one input is one step back. */
  private lastEdited: RigKey | null = null;
  private pause: ReturnType<typeof setTimeout> | undefined;

  constructor(props: Props) {
    super(props);
    this.slings = Object.keys(props.setup.slings);
    // First the rig that is in the page already; the address is read once the page is alive.
    const { rig } = parseLink(props.setup.rig, { slings: this.slings });
    const { isFolded } = props.setup;
    this.state = { words: wordsOf(rig), off: {}, faults: {}, rig, isFolded, origin: isFolded ? 'page' : 'example' };
  }

  override componentDidMount(): void {
    addEventListener('popstate', this.readAddress);
    this.readAddress();
  }

  override componentWillUnmount(): void {
    removeEventListener('popstate', this.readAddress);
  }

  /** Takes the rig from the address: path of a prebuilt page, then query. */
  private readonly readAddress = (): void => {
    const { pathname, search } = location;
    const fromPath = parsePath(pathname, { slings: this.slings });
    const link = parseLink(search, { slings: this.slings }, fromPath.rig);
    link.notUnderstood.unshift(...fromPath.notUnderstood);
    const words = wordsOf(link.rig);
    // What could not be used stays in its field as it was asked for, so that it can be mended there.
    const asked = new URLSearchParams(search);
    for (const key of RIG_KEYS) {
      const [one, ...more] = asked.getAll(key);
      const isRefused = link.notUnderstood.some(({ piece }) => piece.startsWith(`${key}=`));
      // A length is chosen from a list, which offers only what it can be.
      if (key !== 'length' && isNumberKey(key) && one !== undefined && more.length === 0 && isRefused) words[key] = one;
    }
    const hasRig = link.understood.length + link.notUnderstood.length > 0;
    const isPage = /\/compare\/[^/]/.test(pathname);
    clearTimeout(this.pause);
    this.lastEdited = null;
    this.setState({
      words, off: {}, faults: rigOf(words, {}, this.slings).faults, rig: link.rig,
      isFolded: hasRig || isPage, origin: hasRig ? 'reader' : isPage ? 'page' : 'example',
    });
    this.props.ask({ rig: link.rig, link });
  };

  /** Asks again after an edit, and lets the address follow. */
  private edit(key: RigKey, words: Words, off: Off): void {
    const { setup, ask } = this.props;
    const { rig, faults } = rigOf(words, off, this.slings);
    this.setState({ words, off, faults, rig, origin: 'reader' });
    ask({ rig, link: null });
    clearTimeout(this.pause);
    const write = (): void => {
      const address = `${setup.base}compare/?${serialiseLink(rig)}`;
      if (this.lastEdited === key) history.replaceState(null, '', address);
      else history.pushState(null, '', address);
      this.lastEdited = key;
      document.title = `${rigLine(rig, setup.slings)} - ${setup.title}`;
    };
    if (isNumberKey(key)) this.pause = setTimeout(write, ADDRESS_PAUSE);
    else write();
  }

  private readonly onInput = (key: RigKey, word: string): void =>
    this.edit(key, { ...this.state.words, [key]: word }, { ...this.state.off, [key]: false });

  private readonly onOff = (key: RigKey, isOff: boolean): void => this.edit(key, this.state.words, { ...this.state.off, [key]: isOff });

  private readonly onDone = (): void => {
    this.setState({ isFolded: true });
    document.getElementById('results-heading')?.focus();
  };

  private readonly onFold = (): void => this.setState((now) => ({ isFolded: !now.isFolded }));

  override render({ setup }: Props, state: State) {
    return <RigPanel {...state} slings={setup.slings} onInput={this.onInput} onOff={this.onOff} onDone={this.onDone} onFold={this.onFold} />;
  }
}
