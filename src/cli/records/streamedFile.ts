import { Tokenizer, TokenizerError, TokenParser, TokenParserError, TokenType } from "@streamparser/json";
import { harmlessText } from "../../lock/harmlessText";
import { DEEPEST } from "../../lock/jsonDepth";
import { FILE_KINDS, type FileKind } from "../../records/file/logbookReading";
import type { Terminal } from "../terminal/command";
import { usageError } from "../terminal/usageError";

/** Hears of the records of a logbook as they come, in whatever order the file has them. */
export interface RecordLists {
  /** @param place - in its list, counted from 0 */
  record(kind: FileKind, value: unknown, place: number): void;
  /** What should be a list of records is none. */
  noList(kind: FileKind): void;
  /** A list of records is over. */
  listEnds?(kind: FileKind): void;
}

/** Bytes of a file that are held beside the records of its lists, and of the record that is under way. */
const MOST_HELD = 16e6;

const DEEPER: Readonly<Partial<Record<TokenType, number>>> = {
  [TokenType.LEFT_BRACE]: 1,
  [TokenType.LEFT_BRACKET]: 1,
  [TokenType.RIGHT_BRACE]: -1,
  [TokenType.RIGHT_BRACKET]: -1,
};

const kindOf = (key: unknown): FileKind | undefined => FILE_KINDS.find((kind) => kind === key);

/** A key of a file, short enough for a sentence. */
const partName = (key: unknown) => harmlessText(String(key).slice(0, 40));

/**
 * A JSON file that is read piece by piece. What its lists hold is handed on one by one and not kept: of a logbook, however
 * long, no more than one record is in memory.
 */
export class StreamedFile {
  /** Bytes that were read. */
  bytes = 0;
  private readonly file: string;
  private readonly tokenizer = new Tokenizer({ stringBufferSize: 64 * 1024 });
  private readonly parser = new TokenParser({ paths: ["$", "$.*", "$.*.*"] });
  private root: unknown;
  private depth = 0;
  /** Where the token under way begins, the last part ended that is held or was handed on, and how much was handed on. */
  private offset = 0;
  private partEnds = 0;
  private handedOn = 0;
  /** Last part that was read whole. */
  private lastPart = "none";
  private readonly listsRead = new Set<FileKind>();

  constructor(file: string) {
    this.file = file;
  }

  /**
   * Reads it to its end.
   *
   * @returns the value of the file, its lists emptied
   * @throws {UsageError} when it cannot be read, is no whole JSON, or is nested or held together as no file of ours is
   */
  async read(terminal: Terminal, lists: RecordLists): Promise<unknown> {
    const { tokenizer, parser } = this;
    tokenizer.onToken = (token) => {
      this.offset = token.offset;
      this.depth += DEEPER[token.token] ?? 0;
      if (this.depth > DEEPEST) throw usageError("file-deep", [this.file]);
      parser.write(token);
    };
    parser.onValue = ({ value, key, parent, stack }) => {
      if (stack.length === 0) this.root = value;
      else if (stack.length === 1) this.field(key, value, lists);
      else if (Array.isArray(parent)) this.item(stack[1]?.key, value, Number(key), lists);
      // What was handed on is not kept.
      if (stack.length > 0 && Array.isArray(parent)) parent.pop();
    };
    for await (const piece of terminal.pieces(this.file)) {
      this.bytes += piece.length;
      this.parse(() => tokenizer.write(piece), "file-broken");
      if (this.bytes - this.handedOn > MOST_HELD) throw this.refused("file-part-large");
    }
    this.parse(() => tokenizer.end(), "file-ends");
    if (!parser.isEnded) throw this.refused("file-ends");
    return this.root;
  }

  private field(key: unknown, value: unknown, lists: RecordLists): void {
    this.partEnds = this.offset;
    this.lastPart = partName(key);
    const kind = kindOf(key);
    if (kind === undefined) return;
    if (this.listsRead.has(kind)) throw this.refused("file-list-twice");
    this.listsRead.add(kind);
    if (Array.isArray(value)) lists.listEnds?.(kind);
    else lists.noList(kind);
  }

  private item(key: unknown, value: unknown, place: number, lists: RecordLists): void {
    this.handedOn += this.offset - this.partEnds;
    this.partEnds = this.offset;
    this.lastPart = `${partName(key)}[${place}]`;
    const kind = kindOf(key);
    if (kind !== undefined && !this.listsRead.has(kind)) lists.record(kind, value, place);
  }

  private parse(step: () => void, code: "file-broken" | "file-ends"): void {
    try {
      step();
    } catch (error) {
      const isNoJson = error instanceof TokenizerError || error instanceof TokenParserError;
      throw isNoJson ? this.refused(code) : error;
    }
  }

  private refused(code: "file-broken" | "file-ends" | "file-list-twice" | "file-part-large") {
    const at = code === "file-ends" ? this.bytes : this.offset;
    return usageError(code, [this.file], { at, last: this.lastPart });
  }
}
