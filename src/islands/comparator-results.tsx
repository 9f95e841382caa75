/** The answer of the comparator in the browser: question in, engine call, markup out. Loaded after the form. */
import { Component, hydrate } from 'preact';
import { Results, type Handlers, type ResultsProps } from '../components/comparator/results.tsx';
import type { Setup } from '../components/comparator/setup.ts';
import { takenAway } from '../components/comparator/taken-away.ts';
import { parseLink } from '../links/parse-link.ts';
import { sharedAddress } from '../links/prebuilt-path.ts';
import { besideOf, serialiseLink } from '../links/serialise-link.ts';
import { compare } from '../strength/compare.ts';
import type { Evidence } from '../strength/types.ts';
import type { Question } from './comparator-rig.ts';
import { copy as copyFrom, say as put } from './take-away.ts';

interface Props { setup: Setup; evidence: Evidence; question: Question }
type State = Pick<ResultsProps, 'comparison' | 'unit' | 'sort' | 'opened' | 'notUnderstood'> & {
  /** Evidence and model that an opened link was made with, where they are not today's. */
  older: { d: string | null; m: number | null } | null;
};

/** Comparisons that are made before the reader asks for any. */
const REHEARSALS = 40;
/** Idle time that has to be left for one more, ms. */
const ONE_REHEARSAL = 16;

/** The drawings of a row as they stand in the page, or the first axis. @param where id of the working, or null */
function drawn(method: string | null): string[] {
  const part = method === null ? document.querySelector('.axis')?.parentElement : document.getElementById(`work-${method}`)?.closest('tr');
  return [...(part?.querySelectorAll('.axis, .lane, .strip') ?? [])].map((svg) => new XMLSerializer().serializeToString(svg));
}

const tools = () => document.querySelector('.tools');
const say = (done: string): void => put(tools(), done);
const copy = (text: string, done: string): Promise<void> => copyFrom(tools(), text, done);

/** The answer with its state. */
class ComparatorResults extends Component<Props, State> {
  /** Link of the rig whose comparison was asked for last. */
  private shown: string;
  /** Methods whose working is open, also while all workings are in the page. */
  private readonly open = new Set<string>();

  constructor(props: Props) {
    super(props);
    const { evidence, setup } = props;
    // The first markup is that of the page as built; the question follows as soon as it is taken over.
    const { rig } = parseLink(setup.rig, { slings: Object.keys(evidence.slings) });
    this.shown = setup.rig;
    this.state = { comparison: compare(evidence, rig), unit: 'kN', sort: 'low', opened: 'all', notUnderstood: [], older: null };
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
      do compare(this.props.evidence, { ...this.state.comparison.rig, bearingMm: 3 + left / 16 });
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
    const unit = link && link.view.unit !== 'kN' ? link.view.unit : this.state.unit;
    const isOlder = (d !== null && d !== evidence.version) || (m !== null && m !== evidence.model);
    this.setState((now) => ({
      comparison: isSame ? now.comparison : compare(evidence, rig),
      // Workings are drawn only where they are open, once the page is no longer the one that was built.
      opened: isSame && unit === now.unit ? now.opened : new Set(this.open),
      unit,
      sort: link && link.view.sort !== 'low' ? link.view.sort : now.sort,
      notUnderstood: link?.notUnderstood ?? [],
      older: isOlder ? { d, m } : null,
    }), () => {
      document.documentElement.classList.remove('reading', 'unread', 'waiting');
      this.tell();
    });
    this.shown = asked;
    say('');
  }

  /** Tells the rest of the page what is shown now. */
  private readonly tell = (): void => {
    dispatchEvent(new CustomEvent('comparison-shown', { detail: this }));
  };

  /** Address of this comparison, with what its answer was made with. */
  private link(): string {
    const { setup, evidence } = this.props;
    const stamp = /^[\d.-]+$/.test(evidence.version) ? { evidence: evidence.version, model: evidence.model } : undefined;
    return new URL(`${setup.base}${sharedAddress(this.state.comparison.rig, stamp)}${besideOf(location.search)}`, location.href).href;
  }

  /** Hands the comparison over in the way that a button of the page names. */
  async take(how: string): Promise<void> {
    if (how === 'print') return print();
    const link = this.link();
    if (how === 'link') return copy(link, 'Link copied.');
    const { comparison, unit, sort } = this.state;
    const text = takenAway[how as keyof typeof takenAway]({ comparison, unit, sort, slings: this.props.setup.slings, link, drawn });
    if (how === 'text') return copy(text, 'Text copied.');
    const anchor = document.createElement('a');
    anchor.href = URL.createObjectURL(new Blob([text]));
    anchor.download = `comparison.${how}`;
    anchor.click();
    URL.revokeObjectURL(anchor.href);
    say(`Saved ${anchor.download}.`);
  }

  private readonly handlers: Handlers = {
    onToggle: (method, isOpen) => {
      if (isOpen) this.open.add(method);
      else this.open.delete(method);
      this.setState({ opened: new Set(this.open) });
    },
    onUnit: (unit) => this.setState({ unit, opened: new Set(this.open) }, this.tell),
    onSort: (sort) => this.setState({ sort }),
  };

  override render({ setup, evidence }: Props, state: State) {
    return <Results setup={setup} evidence={evidence} handlers={this.handlers} {...state} />;
  }
}

/** Takes over the results of the page. @returns what later questions go to */
export function startResults(root: Element, setup: Setup, evidence: Evidence, question: Question): (question: Question) => void {
  let island: ComparatorResults | null = null;
  hydrate(<ComparatorResults setup={setup} evidence={evidence} question={question} ref={(made: ComparatorResults | null) => { island = made; }} />, root);
  document.querySelector<HTMLElement>('.tools')?.addEventListener('click', ({ target }) => {
    if (target instanceof HTMLButtonElement) island?.take(target.name).catch(() => say('That failed. Try again.'));
  });
  return (next) => island?.answer(next);
}
