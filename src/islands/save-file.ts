/** Hands a text to the reader as a file. @param type media type, where a device opens such files by it */
export function save(name: string, text: string, type?: string): void {
  const anchor = document.createElement('a');
  anchor.href = URL.createObjectURL(new Blob([text], type === undefined ? {} : { type }));
  anchor.download = name;
  anchor.click();
  URL.revokeObjectURL(anchor.href);
}
