import { inTheTray } from "../../../src/fitting/assembly";
import { checksOf } from "../../../src/fitting/fitChecks";
import { checkLabel } from "../../../src/fitting/fitWords";
import { type Graduations, wrap } from "../../../src/lock/dial";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { Fitter } from "../fitting";
import { doorWith, Handover } from "../handover";
import { KeyHand } from "../hands";
import { expect, test } from "../page";
import { byKey } from "../press";
import { Zeroing } from "../zeroing";

const LOCK = shippedProfile("two-wheel");
if (LOCK.kind !== "wheel-pack" || LOCK.changing === undefined) throw new Error("it takes a change key");
const { index } = LOCK.changing;
const N = LOCK.graduations;
/** Turns enough to spin the lock off, graduations, away from the draw. */
const SPIN = LOCK.draw.turn === "right" ? 450 : -450;
const UNDER_COVER = checksOf(inTheTray(1))
  .filter((check) => check !== "cover")
  .map((check) => checkLabel(check, { board: null }));

/** Keys of a hand that watches the dial: where friction held it back, it turns on. */
class WatchfulHand extends KeyHand {
  override async turnBy(by: Graduations): Promise<void> {
    const { dial } = this.bench;
    const reads = async () => Number(await dial.getAttribute("aria-valuenow"));
    const before = await reads();
    await super.turnBy(by);
    const rest = wrap(before + by - (await reads()), N);
    if (rest * by > 0) await super.turnBy(rest);
  }
}

test("an apprentice's path by keys: fit badly, align, see why it does not hold, take it apart, fit it right, prove it and hand it over", async ({
  page,
}) => {
  test.setTimeout(600_000);
  const door = new Handover(page, byKey);
  const fitter = new Fitter(page, byKey);
  const hand = new WatchfulHand(door.bench, N);
  const zeroing = new Zeroing(page);
  const { seed } = doorWith({ isHandsOff: false });

  const aligns = async () => {
    await door.does("Align the ring");
    await zeroing.straighten();
    await door.does("Clamp the ring", "Back to the door");
    await expect(door.state("ring")).toHaveText("aligned");
  };
  const opens = async () => {
    await hand.turnBy(SPIN);
    await door.dial(hand, LOCK, await door.numbers());
    await door.expectTold("You dialed it: the bolt came back.");
  };
  const closesUp = async () => {
    await fitter.check(...UNDER_COVER);
    await fitter.does("Put the cover on");
    await fitter.check(checkLabel("cover", { board: null }));
    await door.does("The lock is fitted");
    await expect(door.state("fit")).toHaveText("fitted");
  };

  await page.goto(`#/handover?view=run&profile=${LOCK.id}&seed=${seed}&fit=first`);
  await door.expectTold("The parts of the lock are in the tray.");
  await fitter.begin();
  await fitter.does("Take the spare spindle");
  await fitter.cut("88.5");
  await fitter.does(
    "File and chamfer the end",
    "Put it on over the bushing",
    "Tighten the ring",
    "In until it touches",
  );
  await fitter.fitKey((off) => off > 10);
  await fitter.does("Drop on the key's screw", "Hang the strike by one screw");
  await fitter.trueStrike();
  await closesUp();

  await door.does("Measure the height");
  await aligns();
  await hand.turnBy(SPIN);
  await door.dial(hand, LOCK, await door.numbers());
  await door.does("It does not open");
  await door.expectTold("it did not open");
  await door.does("Look back");
  await expect(page.getByRole("region", { name: "The fit" })).toContainText(
    "The key is in the wrong keyway. Every number is off by a part of a turn.",
  );

  await door.does("Take the lock apart again");
  await door.expectTold("Ring, zero and every proof so far are void.");
  await fitter.does("Take the cover off", "Remove the key", "In until it touches");
  await fitter.fitKey();
  await fitter.does("Drop on the key's screw");
  await closesUp();

  await aligns();
  await opens();
  await hand.turnBy(SPIN);
  await door.change("61-28");
  const change = page.getByRole("region", { name: "Change by hand" });
  await door.dial(hand, LOCK, await door.numbers(), index, false);
  await door.does("Insert the key", "Turn the key");
  await expect(change).toContainText("the wheels are free");
  await door.dial(hand, LOCK, [61, 28], index, false);
  await door.does("Turn the key back", "Remove the key", "Done");
  await expect(door.combination).toHaveText("61-28");
  for (let k = 0; k < 3; k++) await opens();
  await door.does("Let the second person open it", "Set the holdback", "Release the holdback");
  await door.does("Test the inside release", "Show an observer the release and let them in");
  await hand.turnBy(SPIN);
  await door.does("Shut the door");
  await opens();
  await door.does("Pull the door open", "Let the person inside out");
  await hand.turnBy(SPIN);
  await door.writeRecord();
  await door.does("Sign the door off");
  await expect(door.verdict).toHaveText("Handed over with every proof, but with 1 fault.");
  await expect(door.debrief.getByRole("list", { name: "Faults" })).toContainText("You took the lock apart.");
  await expect(page.getByRole("region", { name: "The fit" })).toContainText("Nothing is wrong with the fit.");

  const downloading = page.waitForEvent("download");
  await door.does("Save the record");
  const path = await (await downloading).path();
  await page.goto("#/handover?view=record");
  const check = page.getByRole("region", { name: "Check a record" });
  await check.getByLabel("Load a file").setInputFiles(path);
  await expect(check.getByRole("status")).toHaveText(/^The record is sound\./);
});
