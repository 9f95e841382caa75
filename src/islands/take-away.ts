/** What the buttons beside an answer do: copy a text, and say what was done. */

/** Says at the buttons what one of them did; a text that could not be copied stands below. @param tools holds a `<p>` and a `<textarea>` */
export function say(tools: Element | null, done: string, text?: string): void {
  const says = tools?.querySelector(':scope > p');
  const byHand = tools?.querySelector<HTMLTextAreaElement>(':scope > textarea');
  if (!says || !byHand) return;
  says.textContent = done;
  byHand.hidden = text === undefined;
  byHand.value = text ?? '';
}

/** Puts text on the clipboard, or in the page where the browser does not allow it. */
export async function copy(tools: Element | null, text: string, done: string): Promise<void> {
  try {
    await navigator.clipboard.writeText(text);
    say(tools, done);
  } catch {
    say(tools, 'Copying was not allowed. The text stands below.', text);
  }
}
