import { LONGEST_LINE } from "./wireLine";

const LINE_FEED = 10;
const RETURN = 13;

/** Cuts bytes into lines, however they come in pieces. It keeps no more than one line. */
export class LineSplitter {
  private text = "";
  /** Whether the line under way is no text, or too long to be a line. */
  private isSpoiled = false;

  /** @returns the lines that have ended, without their ends; null for one that is no text or too long. Empty ones are left out */
  take(bytes: Uint8Array): (string | null)[] {
    const lines: (string | null)[] = [];
    for (const byte of bytes) {
      if (byte !== LINE_FEED) this.add(byte);
      else lines.push(...this.ended());
    }
    return lines;
  }

  private ended(): (string | null)[] {
    const { text, isSpoiled } = this;
    this.text = "";
    this.isSpoiled = false;
    if (isSpoiled) return [null];
    return text === "" ? [] : [text];
  }

  private add(byte: number): void {
    if (byte === RETURN || this.isSpoiled) return;
    this.isSpoiled = byte < 32 || byte > 126 || this.text.length >= LONGEST_LINE;
    if (!this.isSpoiled) this.text += String.fromCharCode(byte);
  }
}
