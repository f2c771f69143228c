/** Deepest nesting that is read: anything of ours is below 20; a reader of JSON runs out of stack some thousands deep. */
export const DEEPEST = 100;

/** Whether the brackets of a JSON text stand more than 100 deep: nothing of ours does, and it is not worth reading. */
export function isNestedDeeply(text: string): boolean {
  // A text that opens no more than that is not so deep, and to count is much quicker than to read.
  return opens(text) > DEEPEST && deepest(text) > DEEPEST;
}

/** How many brackets a text opens, in strings too; counts no further than needed. */
function opens(text: string): number {
  let count = 0;
  for (let at = text.indexOf("["); at >= 0 && count <= DEEPEST; at = text.indexOf("[", at + 1)) count += 1;
  for (let at = text.indexOf("{"); at >= 0 && count <= DEEPEST; at = text.indexOf("{", at + 1)) count += 1;
  return count;
}

/** How deep its brackets go; looks no further than needed. */
function deepest(text: string): number {
  let depth = 0;
  for (let i = 0; i < text.length && depth <= DEEPEST; i++) {
    const char = text.charCodeAt(i);
    if (char === QUOTE) i = endOfString(text, i);
    else depth += CHANGES[char] ?? 0;
  }
  return depth;
}

/** Where the string ends that begins at a quote: its other quote, or the end of the text. */
function endOfString(text: string, begins: number): number {
  for (let i = begins + 1; i < text.length; i++) {
    const char = text.charCodeAt(i);
    if (char === QUOTE) return i;
    if (char === BACKSLASH) i++;
  }
  return text.length;
}

const QUOTE = 34;
const BACKSLASH = 92;
/** What the brackets [ ] { } do to the depth, by their codes. */
const CHANGES: Readonly<Record<number, number>> = { 91: 1, 93: -1, 123: 1, 125: -1 };
