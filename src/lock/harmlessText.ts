/**
 * Characters that turn the direction of what stands round them, and so make a text look like another one: the bidi
 * marks, embeddings, overrides and isolates. Source: Unicode Standard Annex 9, 2.1 to 2.6; U+061C is its Arabic mark.
 */
const BIDI_CONTROLS = /[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/g;

/** Control characters, which have no picture: of C0 (but for tab and line ends), DEL and C1. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROLS = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F]/g;

/** Halves of a letter that lost the other half: no file in UTF-8 can hold them. */
const HALVES = /\p{Cs}/gu;

/** What is shown in the place of a character that would act unseen: the replacement character. */
const SHOWN = "\uFFFD";

/**
 * A text that came from outside, safe to show, to write in a CSV and in a file name: a character that would turn the
 * text about, or has no picture, is shown as U+FFFD, so that nobody takes one name for another.
 *
 * Only for showing: records keep what was written.
 */
export const harmlessText = (text: string): string =>
  text.replace(BIDI_CONTROLS, SHOWN).replace(CONTROLS, SHOWN).replace(HALVES, SHOWN);

/** A name, safe to show: on one line, without spaces at its ends. */
export const harmlessName = (name: string): string => harmlessText(name.replace(/\s+/g, " ").trim());
