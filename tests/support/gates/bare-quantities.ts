/**
 * Finds quantities on a page that lead to no origin.
 *
 * One function for two kinds of tree: the parsed HTML of a build, and the live page in a browser (so that
 * what a script draws obeys the same rule). It is sent to the browser as text, so it uses nothing outside itself.
 */

/** The little of a tree that is needed: a browser's nodes and the parser's nodes both have it. */
export interface TreeNode {
  nodeType: number;
  textContent: string | null;
  childNodes: ArrayLike<TreeNode>;
}

/** A quantity with no origin, and the chain of elements it stands in, outermost first. */
export interface BareQuantity {
  text: string;
  where: string;
  /** What the text is: running text, or the name of an attribute that is read out or shown. */
  in: string;
}

/** A marker that covers more than a quantity: it would hide others. */
export interface WideMarker {
  marker: string;
  where: string;
  holds: string;
}

export interface Quantities {
  bare: BareQuantity[];
  wide: WideMarker[];
  /** Values of `data-working`, as written. */
  workings: { target: string; where: string }[];
  /** Figure links that a number stands in. */
  figures: { href: string; text: string; where: string }[];
  /** How many texts with a digit were looked at. */
  seen: number;
}

/**
 * Walks the tree under `root`. A text with a digit must stand inside one of: a link to a figure's page,
 * `data-working` (leads to a working whose leaves are figures), `data-input` (what the reader gave),
 * `data-axis`, `<time>`, `<cite>`, `data-id` (record ids, versions, addresses).
 */
export function quantitiesIn(root: TreeNode): Quantities {
  const found: Quantities = { bare: [], wide: [], workings: [], figures: [], seen: 0 };
  // Digits of any script, fractions and superscripts.
  const digit = /[\p{Nd}\p{No}\p{Nl}]/u;
  const figureAddress = /(?:^|\/)figures\/[a-z0-9-]+\/[a-z0-9-]+\/(?:#|$)/;
  const shown = ['alt', 'title', 'placeholder', 'aria-label', 'aria-description', 'aria-valuetext', 'aria-roledescription', 'label'];
  const unread = new Set(['script', 'style', 'template', 'head']);
  const blocks = new Set(['p', 'section', 'article', 'aside', 'main', 'table', 'ul', 'ol', 'dl', 'h1', 'h2', 'h3', 'h4', 'h5', 'h6', 'nav']);

  type Element = TreeNode & { tagName: string; getAttribute(name: string): string | null | undefined };
  const attribute = (element: Element, name: string): string | null => element.getAttribute(name) ?? null;

  /** Names what makes an element an origin, or null. */
  const markerOf = (element: Element, tag: string): string | null => {
    if (tag === 'a' && figureAddress.test(attribute(element, 'href') ?? '')) return 'figure';
    for (const name of ['data-working', 'data-input', 'data-axis', 'data-id']) if (attribute(element, name) !== null) return name;
    return tag === 'time' || tag === 'cite' ? tag : null;
  };

  /** First block element inside an element, for markers that may hold none. */
  const blockIn = (node: TreeNode): string | null => {
    for (const child of Array.from(node.childNodes)) {
      if (child.nodeType !== 1) continue;
      const tag = (child as Element).tagName.toLowerCase();
      if (blocks.has(tag)) return tag;
      const deeper = blockIn(child);
      if (deeper) return deeper;
    }
    return null;
  };

  const walk = (node: TreeNode, where: string, origin: string | null, link: string | null): void => {
    for (const child of Array.from(node.childNodes)) {
      if (child.nodeType === 3) {
        const text = (child.textContent ?? '').replace(/\s+/g, ' ').trim();
        if (!digit.test(text)) continue;
        found.seen += 1;
        if (origin === null) found.bare.push({ text, where, in: 'text' });
        if (link !== null) found.figures.push({ href: link, text, where });
        continue;
      }
      if (child.nodeType !== 1) continue;
      const element = child as Element;
      const tag = element.tagName.toLowerCase();
      if (unread.has(tag)) continue;
      const id = attribute(element, 'id');
      const name = attribute(element, 'class')?.split(/\s+/)[0];
      const outermost = tag === 'html' || tag === 'body';
      const here = outermost ? '' : id ? `${tag}#${id}` : `${where}${where ? ' > ' : ''}${tag}${name ? `.${name}` : ''}`;
      const marker = markerOf(element, tag);
      if (marker === 'data-working') found.workings.push({ target: attribute(element, 'data-working') ?? '', where: here });
      else if (marker !== null && marker !== 'figure') {
        const block = blockIn(element);
        if (block) found.wide.push({ marker, where: here, holds: block });
      }
      const inside = marker ?? origin;
      for (const attributeName of shown) {
        const text = attribute(element, attributeName);
        if (text === null || !digit.test(text)) continue;
        found.seen += 1;
        if (inside === null) found.bare.push({ text, where: here, in: attributeName });
      }
      walk(element, here, inside, marker === 'figure' ? attribute(element, 'href') : link);
    }
  };
  walk(root, '', null, null);
  return found;
}
