import {
  checkRun,
  faultLines,
  fitLines,
  type HandoverResult,
  type MadeFault,
  missingWords,
  ownDoor,
  verdictWords,
} from "../handover/run/checkRun";
import { parseRun, type RecordedRun } from "../handover/run/recordedRun";
import { FAULT_WORDS } from "../handover/run/rules/faultWords";
import { RunError } from "../handover/run/rules/runError";
import { RUN_WORDS } from "../handover/run/rules/runWords";
import { LockError } from "../lock/lockError";
import { wordsOf } from "../wording/problem";
import type { Command } from "./terminal/command";
import { jsonFile } from "./terminal/jsonFile";
import { usageError } from "./terminal/usageError";

interface Checked {
  readonly result: HandoverResult;
  /** What is to be said of its door, a sentence; null where its seed drew it. */
  readonly door: string | null;
}

const list = (title: string, lines: readonly string[]) =>
  lines.length === 0 ? "" : `\n${title}\n${lines.map((line) => `  ${line}\n`).join("")}`;

const inLines = (fault: MadeFault) => {
  const [head, ...more] = faultLines(fault);
  return [head, ...more.map((line) => `  ${line}`)];
};

const inWords = ({ result, door }: Checked) => {
  const hand = result.isHandsOff ? " A simulated hand did the dialing." : "";
  return [
    `${verdictWords(result)}${hand}\n`,
    list("Missing:", missingWords(result.missing)),
    list("Wrong with the fit:", fitLines(result)),
    list("Faults, in order:", result.faults.flatMap(inLines)),
    list("Note:", door === null ? [] : [door]),
  ].join("");
};

const asJson = ({ result, door }: Checked) => ({
  ...result,
  isDoorDrawn: door === null,
  missing: result.missing.map((code) => ({ code, message: missingWords([code])[0] })),
  faults: result.faults.map((fault) => {
    const { happened, ...words } = FAULT_WORDS[fault.code];
    return { ...fault, message: happened, ...words };
  }),
});

/** A run of a file. @throws {UsageError} when it cannot be read, or cannot have happened */
const checked = (file: string, value: unknown): Checked => {
  try {
    const recorded: RecordedRun = parseRun(value);
    const result = checkRun(recorded);
    const own = ownDoor(recorded);
    return { result, door: own === undefined ? null : wordsOf(own, RUN_WORDS) };
  } catch (error) {
    if (error instanceof RunError || error instanceof LockError)
      throw usageError("file-refused", [], { file, why: error.message });
    throw error;
  }
};

/** `gatefall handover check FILE` */
export const handoverCommand: Command = {
  usage: `gatefall handover check FILE [--json]      (FILE "-" reads standard input)

FILE holds one recorded handover, as the Handover page saves it:
  {"format": "gatefall-handover", "version": 1, "profile": "three-wheel", "scene": {...}, "seed": 5,
   "events": [{"type": "mounting.measured", "height_in": 44, "at_ms": 4000}, ...]}

It is replayed step by step, and every step is compared with the scene and its lock. Scene, tray and new parts are
compared with its seed, which draws them: a file with "drawnBy" must have them all, and of any other you are told whether
it does. You see whether the door was handed
over, what was missing, and every fault in order: who is harmed by it, what should have been done, and the source of that.
A fault that was undone in the debrief is listed too.
The exit status is 0 for a clean handover, 1 when something was missing or a fault was made, and 2 for a file that cannot
be read or cannot have happened.

  --json          print JSON`,
  options: { json: { type: "boolean" } },
  async run(words, options, terminal) {
    const [verb, file, ...more] = words;
    if (verb !== "check" || file === undefined || more.length > 0)
      throw usageError("wants-check-file", [], { command: "handover" });
    const found = checked(file, await jsonFile(file, terminal));
    await terminal.write(options.json === true ? `${JSON.stringify(asJson(found))}\n` : inWords(found));
    return found.result.isClean ? 0 : 1;
  },
};
