import { DrillError } from "../drill/drillError";
import { RECORD_WORDS } from "./recordWords";

/** A record that cannot be read, or that is none. */
export class RecordError extends DrillError {
  override readonly name = "RecordError";
  protected override readonly words = RECORD_WORDS;
}
