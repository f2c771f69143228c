/** What one fills in or chooses, in the order of the page; a button that has a file chosen is no field. */
const FIELDS =
  'input:not([type="hidden"], [type="file"], [readonly], :disabled), select:not(:disabled), textarea:not([readonly], :disabled)';

/** The first field of a dialog, for the focus; of choices of which one is made, the one that is made. Null without fields. */
export function firstField(dialog: ParentNode): HTMLElement | null {
  const field = dialog.querySelector<HTMLElement>(FIELDS);
  if (!(field instanceof HTMLInputElement) || field.type !== "radio") return field;
  const group = [...dialog.querySelectorAll<HTMLInputElement>("input[type=radio]")];
  return group.find(({ name, checked }) => name === field.name && checked) ?? field;
}
