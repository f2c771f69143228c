/** Comes after whatever the page has to draw: keeping a record never holds up the hand. */
export const afterDrawing = (act: () => void) => void setTimeout(act, 0);
