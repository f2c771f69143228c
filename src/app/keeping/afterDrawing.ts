const waiting = new Set<() => void>();

/** Comes after whatever the page has to draw: keeping a record never holds up the hand. */
export function afterDrawing(act: () => void): void {
  const once = () => void (waiting.delete(once) && act());
  waiting.add(once);
  setTimeout(once, 0);
}

/** Does at once what waits for the drawing, in order: a page that goes draws no more. */
export function actNow(): void {
  for (const act of [...waiting]) act();
}
