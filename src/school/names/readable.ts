/** Zero-width joiner and non-joiner: some scripts are written with them, and signs of several parts are made with them. */
export const JOINERS = /[\u200c\u200d]/gu;

/** A joiner between two letters, with their marks, or between two parts of a sign: there it belongs. */
const JOINING =
  /(?<=[\p{L}\p{M}\p{Extended_Pictographic}\p{EMod}])[\u200c\u200d](?=[\p{L}\p{Extended_Pictographic}])/gu;

/**
 * What nobody sees and what changes how others are seen: controls, line breaks, marks and overrides of direction, signs of no
 * width, halves of a pair (a database stores another sign in their place), and letters that are blank.
 */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Co}\p{Cn}\p{Cs}\p{Zl}\p{Zp}\u115f\u1160\u2800\u3164\uffa0]|\u034f|\u17b4|\u17b5/u;

/** Line breaks and tabs of a text of several lines. */
const LAID_OUT = /[\n\r\t]/gu;

const hasUnseen = (text: string): boolean => UNSEEN.test(text.replace(JOINING, ""));

/** Whether a name can be read by everybody, on one line: something is there, and no sign that is not seen. */
export const isReadableName = (name: string): boolean => /[\p{L}\p{N}]/u.test(name) && !hasUnseen(name);

/** Whether a text of several lines shows all that is in it, as it is in it. */
export const isReadableText = (text: string): boolean => !hasUnseen(text.replace(LAID_OUT, ""));
