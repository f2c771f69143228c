import roundAndRound from "../../../shared/sheets/01-round-and-round.json" with { type: "json" };
import threeNotFour from "../../../shared/sheets/02-three-not-four.json" with { type: "json" };
import wholeCombination from "../../../shared/sheets/03-whole-combination.json" with { type: "json" };
import pastIt from "../../../shared/sheets/04-past-it.json" with { type: "json" };
import talkToMe from "../../../shared/sheets/05-talk-to-me.json" with { type: "json" };
import roundAgain from "../../../shared/sheets/06-round-again.json" with { type: "json" };
import whereIsZero from "../../../shared/sheets/07-where-is-zero.json" with { type: "json" };
import numbersForAStranger from "../../../shared/sheets/08-numbers-for-a-stranger.json" with { type: "json" };
import changeAndProve from "../../../shared/sheets/09-change-and-prove.json" with { type: "json" };
import locksOfEveryKind from "../../../shared/sheets/10-locks-of-every-kind.json" with { type: "json" };
import fridaySitting from "../../../shared/sheets/11-friday-sitting.json" with { type: "json" };
import changingWeek from "../../../shared/sheets/12-changing-week.json" with { type: "json" };
import troubleHour from "../../../shared/sheets/13-trouble-hour.json" with { type: "json" };
import firstHandover from "../../../shared/sheets/14-first-handover.json" with { type: "json" };
import handoverSitting from "../../../shared/sheets/15-handover-sitting.json" with { type: "json" };
import fittingAndFaults from "../../../shared/sheets/16-fitting-and-faults.json" with { type: "json" };
import serviceRound from "../../../shared/sheets/17-service-round.json" with { type: "json" };
import fromTheTray from "../../../shared/sheets/18-from-the-tray.json" with { type: "json" };
import { parseSheet } from "./parseSheet";
import type { Sheet } from "./sheet";

/** The sample sheets that come with the trainer, from the first lesson to the handover of a whole door. */
export const SHIPPED_SHEETS: readonly Sheet[] = [
  roundAndRound,
  threeNotFour,
  wholeCombination,
  pastIt,
  talkToMe,
  roundAgain,
  whereIsZero,
  numbersForAStranger,
  changeAndProve,
  locksOfEveryKind,
  fridaySitting,
  changingWeek,
  troubleHour,
  firstHandover,
  handoverSitting,
  fittingAndFaults,
  serviceRound,
  fromTheTray,
].map(parseSheet);
