/** Copies by way of a selection, where the page has no clipboard: it is on plain http, or was refused it. */
function copyBySelection(text: string): boolean {
  const field = document.createElement("textarea");
  field.value = text;
  field.readOnly = true;
  field.className = "visually-hidden";
  const before = document.activeElement;
  // A dialog keeps the focus to itself, and the field must be within it.
  const place = before?.closest('[role="dialog"]') ?? document.body;
  place.append(field);
  field.select();
  try {
    return document.execCommand("copy");
  } catch {
    return false;
  } finally {
    field.remove();
    if (before instanceof HTMLElement) before.focus();
  }
}

/** Puts a text on the clipboard, on every page, with or without a secure address. @returns whether it is there now */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return copyBySelection(text);
  }
}
