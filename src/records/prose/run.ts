/** A run of text as a reader sees it, gathered over markup, that still knows where each of its letters stands in the file. */

/** Stands for something that is no text: a figure, a computed value, a picture. */
export const OPAQUE = '\ufffc';

export interface Run {
  text: string;
  /** Offset in the file of each UTF-16 unit of `text`. */
  offsets: number[];
  /** What kind of place it stands in, for rules that ask. */
  kind: 'text' | 'attribute' | 'code' | 'front matter';
}

/** A component by which prose names a figure: `<Fig id="source/result" />`. */
export interface Mention {
  id: string;
  offset: number;
}

export interface Prose {
  runs: Run[];
  mentions: Mention[];
  /** What kept the file from being read. */
  failures: { offset: number; message: string }[];
}

const ENTITIES: Record<string, string> = {
  nbsp: '\u00a0',
  thinsp: '\u2009',
  ensp: ' ',
  emsp: ' ',
  ndash: '\u2013',
  mdash: '\u2014',
  minus: '\u2212',
  deg: '\u00b0',
  times: '\u00d7',
  percnt: '%',
  euro: '\u20ac',
  shy: '\u200b',
  zwnj: '\u200b',
  plusmn: '\u00b1',
  frac12: '\u00bd',
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
};

/** Gathers runs; a block boundary ends one. */
export class RunGatherer {
  readonly prose: Prose = { runs: [], mentions: [], failures: [] };
  private open: Run = { text: '', offsets: [], kind: 'text' };

  /** Adds a piece of the file as readable text: entities, escapes of strings and of Markdown become what they print. */
  add(source: string, from: number, to: number): void {
    const piece = source.slice(from, to);
    const pattern =
      /&(#\d+|#x[0-9a-f]+|[a-z]+\d*);|\\u\{?([0-9a-f]{2,6})\}?|\\x([0-9a-f]{2})|\\[nrt](?![a-z])|\\(?=[!-/:-@[-`{-~])/gi;
    let last = 0;
    for (const match of piece.matchAll(pattern)) {
      this.plain(piece.slice(last, match.index), from + last);
      const name = match[1];
      if (name !== undefined) {
        const code =
          name.startsWith('#x') || name.startsWith('#X')
            ? Number.parseInt(name.slice(2), 16)
            : name.startsWith('#')
              ? Number(name.slice(1))
              : undefined;
        const printed =
          code === undefined ? (ENTITIES[name] ?? OPAQUE) : code <= 0x10ffff ? String.fromCodePoint(code) : OPAQUE;
        for (const unit of printed) this.plain(unit, from + match.index);
      } else if (match[2] ?? match[3]) {
        this.plain(
          String.fromCodePoint(Math.min(Number.parseInt((match[2] ?? match[3]) as string, 16), 0xffff)),
          from + match.index,
        );
      } else if (match[0].length > 1) this.plain(' ', from + match.index);
      last = match.index + match[0].length;
    }
    this.plain(piece.slice(last), from + last);
  }

  /** Adds text as it is. */
  plain(text: string, from: number): void {
    for (let i = 0; i < text.length; i++) this.open.offsets.push(from + i);
    this.open.text += text;
  }

  /** Adds a place that is no text. */
  opaque(from: number): void {
    this.plain(OPAQUE, from);
  }

  /** Ends the open run. */
  end(): void {
    if (this.open.text.trim()) this.prose.runs.push(this.open);
    this.open = { text: '', offsets: [], kind: 'text' };
  }

  /** Adds a run that stands apart from the flow. */
  apart(kind: Run['kind'], source: string, from: number, to: number): void {
    const kept = this.open;
    this.open = { text: '', offsets: [], kind };
    this.add(source, from, to);
    if (this.open.text.trim()) this.prose.runs.push(this.open);
    this.open = kept;
  }

  /** Adds a run apart from the flow whose letters cannot be found in the file: all of it stands at one place. */
  apartAt(kind: Run['kind'], text: string, at: number): void {
    if (text.trim()) this.prose.runs.push({ text, offsets: new Array<number>(text.length).fill(at), kind });
  }

  /** Sets the open run aside while something apart from the flow is gathered. */
  hold(): Run {
    const kept = this.open;
    this.open = { text: '', offsets: [], kind: 'text' };
    return kept;
  }

  /** Goes on with a run that was set aside. */
  resume(kept: Run): void {
    this.end();
    this.open = kept;
  }
}
