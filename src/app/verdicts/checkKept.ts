import type { Motion } from "../../dialing/motion";
import { type SittingShown, sittingShown } from "../../records/sitting/sittingShown";
import { APP_VERSION } from "../parts/page/appVersion";
import type { KeptRecord } from "./keptRecord";

/**
 * Checks a record that was read.
 *
 * @param motions - of its tries as they are saved beside it, for a record that brings none
 * @throws {DrillError} with a sentence, for what cannot be checked
 */
export const checkKept = ({ record, sha256 }: KeptRecord, motions: readonly (Motion | null)[]): SittingShown =>
  sittingShown({ record, sha256 }, APP_VERSION, (index) => motions[index] ?? undefined);
