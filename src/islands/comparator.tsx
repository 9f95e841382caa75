/**
 * The comparator in the browser: state in, engine call, markup out. The rig is
 * kept as the words of the form; a link and the form are read by the same parser.
 */
import { Component } from 'preact';
import type { Off, Words } from '../components/comparator/form.tsx';
import { isNumberKey, rigOf, wordsOf } from '../components/comparator/form-words.ts';
import { Comparator, type ComparatorProps, type Handlers } from '../components/comparator/comparator.tsx';
import type { Setup } from '../components/comparator/setup.ts';
import { rigLine } from '../components/comparator/words.ts';
import { type NotUnderstood, parseLink } from '../links/parse-link.ts';
import { parsePath } from '../links/prebuilt-path.ts';
import { RIG_KEYS, type ForceUnit, type RigKey, type SortOrder } from '../links/rig-keys.ts';
import { serialiseLink } from '../links/serialise-link.ts';
import { compare } from '../strength/compare.ts';
import type { Comparison, Evidence } from '../strength/types.ts';

interface Props { setup: Setup; evidence: Evidence }
interface State {
  words: Words;
  off: Off;
  comparison: Comparison;
  faults: Partial<Record<RigKey, string>>;
  unit: ForceUnit;
  sort: SortOrder;
  opened: ComparatorProps['opened'];
  isFolded: boolean;
  origin: ComparatorProps['origin'];
  notUnderstood: readonly NotUnderstood[];
  older: ComparatorProps['older'];
  done: ComparatorProps['done'];
}

/** Pause after the last key before the address follows, ms: short enough to copy the address, long enough not to flood it. */
const ADDRESS_PAUSE = 300;

/** The comparator with its state. */
export class ComparatorIsland extends Component<Props, State> {
  private readonly slings: readonly string[];
  /** Input that the newest entry of the history stands for: a run of edits to one input is one step back. */
  private lastEdited: string | null = null;
  private pause: ReturnType<typeof setTimeout> | undefined;

  constructor(props: Props) {
    super(props);
    this.slings = Object.keys(props.evidence.slings);
    // First the rig that is in the page already; the address is read once the page is alive.
    const { rig } = parseLink(props.setup.rig, { slings: this.slings });
    this.state = {
      words: wordsOf(rig), off: {}, faults: {}, comparison: compare(props.evidence, rig), unit: 'kN', sort: 'low', opened: 'all',
      isFolded: props.setup.isFolded, origin: props.setup.isFolded ? 'page' : 'example', notUnderstood: [], older: null, done: null,
    };
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
    const { evidence } = this.props;
    const { pathname, search } = location;
    const fromPath = parsePath(pathname, { slings: this.slings });
    const link = parseLink(search, { slings: this.slings }, fromPath.rig);
    const words = wordsOf(link.rig);
    // What could not be used stays in its field as it was asked for, so that it can be mended there.
    const asked = new URLSearchParams(search);
    for (const key of RIG_KEYS) {
      const [one, ...more] = asked.getAll(key);
      if (isNumberKey(key) && one !== undefined && more.length === 0 && link.notUnderstood.some(({ piece }) => piece.startsWith(`${key}=`))) words[key] = one;
    }
    const { faults } = rigOf(words, {}, this.slings);
    const isOlder = (link.d !== null && link.d !== evidence.version) || (link.m !== null && link.m !== evidence.model);
    const hasRig = link.understood.length + link.notUnderstood.length > 0;
    this.lastEdited = null;
    this.setState((now) => ({
      words, off: {}, faults, comparison: hasRig || serialiseLink(link.rig) !== serialiseLink(now.comparison.rig) ? compare(evidence, link.rig) : now.comparison,
      unit: hasRig && /[?&]unit=/.test(search) ? link.view.unit : now.unit,
      sort: hasRig && /[?&]sort=/.test(search) ? link.view.sort : now.sort,
      opened: hasRig && now.opened === 'all' ? new Set<string>() : now.opened,
      isFolded: hasRig || this.props.setup.isFolded,
      origin: hasRig ? 'reader' : /\/compare\/[^/]/.test(pathname) ? 'page' : 'example',
      notUnderstood: [...fromPath.notUnderstood, ...link.notUnderstood],
      older: isOlder ? { d: link.d, m: link.m } : null, done: null,
    }), this.matched);
  };

  /** The page now shows the rig of its address: what was hidden until then may show. */
  private readonly matched = (): void => {
    document.documentElement.classList.remove('reading', 'unread');
    dispatchEvent(new Event('comparison-shown'));
  };

  /** Recomputes after an edit, and lets the address follow. */
  private edit(key: RigKey, words: Words, off: Off): void {
    const { rig, faults } = rigOf(words, off, this.slings);
    this.setState((now) => ({
      words, off, faults, comparison: compare(this.props.evidence, rig), origin: 'reader', older: null, done: null, notUnderstood: [],
      opened: now.opened === 'all' ? new Set<string>() : now.opened,
    }), this.matched);
    clearTimeout(this.pause);
    const write = (): void => {
      const { setup, evidence } = this.props;
      const address = `${setup.base}compare/?${serialiseLink(rig)}`;
      if (this.lastEdited === key) history.replaceState(null, '', address);
      else history.pushState(null, '', address);
      this.lastEdited = key;
      document.title = `${rigLine(rig, evidence.slings)} - ${setup.title}`;
    };
    if (isNumberKey(key)) this.pause = setTimeout(write, ADDRESS_PAUSE);
    else write();
  }

  /** Address of this comparison with what its answer was made with. */
  private link(): string {
    const { setup, evidence } = this.props;
    const stamp = /^\d/.test(evidence.version) ? { evidence: evidence.version, model: evidence.model } : undefined;
    return new URL(`${setup.base}compare/?${serialiseLink(this.state.comparison.rig, stamp)}`, location.href).href;
  }

  /** Puts text on the clipboard, or in the page where the browser does not allow it. */
  private async copy(text: string, says: string): Promise<void> {
    try {
      await navigator.clipboard.writeText(text);
      this.setState({ done: { says } });
    } catch {
      this.setState({ done: { says: 'This browser did not allow copying. The text stands below.', text } });
    }
  }

  private readonly handlers: Handlers = {
    onInput: (key, word) => this.edit(key, { ...this.state.words, [key]: word }, { ...this.state.off, [key]: false }),
    onOff: (key, isOff) => this.edit(key, this.state.words, { ...this.state.off, [key]: isOff }),
    onDone: () => {
      this.setState({ isFolded: true });
      document.getElementById('results-heading')?.focus();
    },
    onChangeRig: () => this.setState((now) => ({ isFolded: !now.isFolded })),
    onToggle: (method, isOpen) => this.setState((now) => {
      if (now.opened === 'all') return null;
      const opened = new Set(now.opened);
      if (isOpen) opened.add(method);
      else opened.delete(method);
      return { opened };
    }),
    onUnit: (unit) => this.setState({ unit }),
    onSort: (sort) => this.setState({ sort }),
    onCopyLink: () => { void this.copy(this.link(), 'Link copied.'); },
    onCopyText: () => {
      void import('../components/comparator/comparison-text.ts').then(({ comparisonText }) =>
        this.copy(comparisonText(this.state.comparison, this.props.evidence, this.state.unit, this.link()), 'Text copied.'));
    },
    onSaveTable: () => {
      void import('../components/comparator/comparison-csv.ts').then(({ comparisonCsv }) => {
        const file = new Blob(['\uFEFF', comparisonCsv(this.state.comparison, this.state.unit, this.link())], { type: 'text/csv' });
        const anchor = document.createElement('a');
        anchor.href = URL.createObjectURL(file);
        anchor.download = 'comparison.csv';
        anchor.click();
        URL.revokeObjectURL(anchor.href);
        this.setState({ done: { says: 'Table saved.' } });
      });
    },
  };

  override render({ setup, evidence }: Props, state: State) {
    const { words, off, faults, ...rest } = state;
    return <Comparator setup={setup} evidence={evidence} form={{ words, off, faults }} handlers={this.handlers} {...rest} />;
  }
}
