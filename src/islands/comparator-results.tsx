/** The answer of the comparator in the browser: question in, engine call, markup out. Loaded after the form. */
import { Component, hydrate } from 'preact';
import { Results, type Handlers, type ResultsProps } from '../components/comparator/results.tsx';
import type { Setup } from '../components/comparator/setup.ts';
import { parseLink } from '../links/parse-link.ts';
import { serialiseLink } from '../links/serialise-link.ts';
import { compare } from '../strength/compare.ts';
import type { Evidence } from '../strength/types.ts';
import type { Question } from './comparator-rig.tsx';

interface Props { setup: Setup; evidence: Evidence; question: Question }
type State = Pick<ResultsProps, 'comparison' | 'unit' | 'sort' | 'opened' | 'notUnderstood' | 'older' | 'done'>;

/** Comparisons that are made before the reader asks for any. */
const REHEARSALS = 12;
/** Idle time that has to be left for one more, ms. */
const ONE_REHEARSAL = 16;

/** The answer with its state. */
class ComparatorResults extends Component<Props, State> {
  /** Link of the rig whose comparison was asked for last. */
  private shown: string;

  constructor(props: Props) {
    super(props);
    const { evidence, setup } = props;
    // The first markup is that of the page as built; the question follows as soon as it is taken over.
    const { rig } = parseLink(setup.rig, { slings: Object.keys(evidence.slings) });
    this.shown = setup.rig;
    this.state = { comparison: compare(evidence, rig), unit: 'kN', sort: 'low', opened: 'all', notUnderstood: [], older: null, done: null };
  }

  override componentDidMount(): void {
    this.answer(this.props.question);
    this.rehearse(REHEARSALS);
  }

  /**
   * Compares a few rigs whose answers nobody sees while the browser is idle: it compiles what runs often, so the
   * first change that a reader makes is answered as fast as later ones.
   */
  private rehearse(times: number): void {
    // Not every browser tells when it is idle.
    globalThis.requestIdleCallback?.((idle) => {
      let left = times;
      do compare(this.props.evidence, { ...this.state.comparison.rig, ratingKn: 5 + left });
      while (--left > 0 && idle.timeRemaining() > ONE_REHEARSAL);
      if (left > 0) this.rehearse(left);
    });
  }

  /** Answers a question; the page shows that rig from then on. */
  answer({ rig, link }: Question): void {
    const { evidence } = this.props;
    const asked = serialiseLink(rig);
    const isSame = asked === this.shown;
    const d = link?.d ?? null;
    const m = link?.m ?? null;
    const isOlder = (d !== null && d !== evidence.version) || (m !== null && m !== evidence.model);
    this.setState((now) => ({
      comparison: isSame ? now.comparison : compare(evidence, rig),
      // Workings are drawn only where they are open, once the page is no longer the one that was built.
      opened: !isSame && now.opened === 'all' ? new Set<string>() : now.opened,
      unit: link && link.view.unit !== 'kN' ? link.view.unit : now.unit,
      sort: link && link.view.sort !== 'low' ? link.view.sort : now.sort,
      notUnderstood: link?.notUnderstood ?? [],
      older: isOlder ? { d, m } : null,
      done: null,
    }), () => {
      document.documentElement.classList.remove('reading', 'unread', 'waiting');
      dispatchEvent(new Event('comparison-shown'));
    });
    this.shown = asked;
  }

  /** Address of this comparison, with what its answer was made with. */
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
        this.copy(comparisonText(this.state.comparison, this.props.setup.slings, this.state.unit, this.link()), 'Text copied.'));
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
    return <Results setup={setup} evidence={evidence} handlers={this.handlers} {...state} />;
  }
}

/** Takes over the results of the page. @returns what later questions go to */
export function startResults(root: Element, setup: Setup, evidence: Evidence, question: Question): (question: Question) => void {
  let island: ComparatorResults | null = null;
  hydrate(<ComparatorResults setup={setup} evidence={evidence} question={question} ref={(made: ComparatorResults | null) => { island = made; }} />, root);
  return (next) => island?.answer(next);
}
