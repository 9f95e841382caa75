/** Whether a form holds something other than what the page came with: a reader may write before the script is there. */
export const isWrittenIn = (form: HTMLFormElement): boolean => [...form.elements].some((field) => {
  if (field instanceof HTMLSelectElement) return field.selectedIndex !== Math.max(0, [...field.options].findIndex(({ defaultSelected }) => defaultSelected));
  if (field instanceof HTMLInputElement) return /checkbox|radio/.test(field.type) ? field.checked !== field.defaultChecked : field.value !== field.defaultValue;
  return field instanceof HTMLTextAreaElement && field.value !== field.defaultValue;
});
