import type { Page } from "@playwright/test";
import { handsBook } from "../support/handsBook";
import { dialingStation, fittingStation, inspectionStation, serviceStation, testSheet } from "../support/testSheet";
import { expectAccepted, NOW, skipWhereDrawnOtherwise } from "./accepted";
import { openBoard } from "./boardPage";
import { ClassPage, joinHere } from "./classPage";
import { openClassroom } from "./classroomPage";
import { Fitter } from "./fitting";
import { doorWith, Handover } from "./handover";
import { test } from "./page";
import { dialLast, openSheet, start } from "./sittingByKeys";
import { StubPort } from "./stubPort";
import { Zeroing, ZeroingHand } from "./zeroing";

/*
 * Every screen, light and dark, on a desk and on a phone, beside the picture that was accepted last
 * (`npm run pictures` accepts what there is now). Letters are drawn otherwise by another browser or system, so there the
 * pictures are skipped, and a line says so.
 */

/** The page's own address, whose port is chosen. */
const ADDRESSES = "svg[aria-label^='QR code'], .class-code p:first-child, [data-address]";

/** What the machine's speed writes into a picture: times of a hand on keys, a clock that runs, a record with its hash. */
const TIMES = ".result-headline, .result td:last-child, .turn-chart-time, [role=timer], .sitting-record";

const SHEET = testSheet({
  title: "Open it twice",
  instructions: ["Dial it twice."],
  cautions: ["No lock in use."],
  stations: [dialingStation({ id: "open it", repetitions: 2, passMarks: { firstTime: 2 } })],
});

/** Jobs that begin without a dial, each by the name of what has the focus. */
const JOBS = {
  "Dial to fit": fittingStation({ repetitions: 1 }),
  "Fit to judge": inspectionStation({ repetitions: 1 }),
  "Service visit": serviceStation({ repetitions: 1 }),
} as const;
const atStation = (name: keyof typeof JOBS) => (page: Page) =>
  start(page, testSheet({ title: "One job", seed: 3, stations: [JOBS[name]] }), page.getByRole("region", { name }));

const at = (address: string) => async (page: Page) => {
  await page.goto(address);
};
const loadDemo = async (page: Page) => {
  await page.goto("#/logbook");
  await page.getByRole("button", { name: /demo/i }).first().click();
  await page
    .getByRole("radio", { name: "Mibsy" })
    .or(page.getByRole("button", { name: "Mibsy" }))
    .first()
    .click();
};

const press = async (page: Page, ...names: readonly string[]) => {
  for (const name of names) await page.getByRole("button", { name, exact: true }).click();
};

/** A zero that was set by the keys, its index true and every stop on it. */
const setZero = async (page: Page) => {
  await page.clock.install({ time: NOW });
  const zeroing = new Zeroing(page);
  await zeroing.open();
  const hand = new ZeroingHand(zeroing);
  await hand.clamp();
  await hand.takeAll("right", [0, 0, 0]);
  await hand.takeAll("left", [0, 0, 0]);
  await zeroing.headline.waitFor();
};
const inDemo = (view: string) => async (page: Page) => {
  await loadDemo(page);
  await page.goto(`#/logbook?view=${view}`);
};

const DOOR = doorWith({});
const RUN = `#/handover?view=run&profile=${DOOR.profile.id}&seed=${DOOR.seed}&hands=off`;

/** An encoder that is being set up, one check made; its port is a stub. */
const dialAtChecks = async (page: Page) => {
  const port = await StubPort.on(page);
  await at("#/dial")(page);
  await press(page, "Choose: Encoder on a serial line", "Connect");
  await page.getByText("Status: waiting for it to answer").waitFor();
  await port.start();
  await press(page, "Go on to zero", "This is 0");
  await port.turn(10 * 24);
  await press(page, "Go on to the checks");
  await port.turn(15.25 * 24);
  // At rest a board goes on saying where it is.
  void port.turnSteadily(0, 200, 250).catch(() => undefined);
  await page.getByText("0.3 graduations left of 25: agrees").first().waitFor();
};

/** What a picture begins at, where that is not the top of the page. */
const BEGINS_AT: Readonly<Record<string, string>> = {
  "handover-debrief": ".run-debrief",
  "logbook-hands": '[aria-label="Does it carry over?"]',
};

/** What a person sees, and how one comes there. */
const SCREENS: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  start: at("#/start"),
  "bench-fresh": at("#/bench?seed=5"),
  "bench-under-way": async (page) => {
    await at("#/bench?seed=5")(page);
    await dialLast(page, [0.5], 2);
  },
  "bench-failed-counts": async (page) => {
    await at("#/bench?seed=5&help=counts")(page);
    await dialLast(page, [0, 3]);
  },
  "bench-encoder-silent": at("#/bench?seed=5&profile=dial-encoder&help=silent"),
  "bench-combination": async (page) => {
    await at("#/bench?seed=5")(page);
    await page.getByRole("button", { name: /^Combination/ }).click();
  },
  fitting: at("#/fitting?seed=3"),
  "fitting-turned": async (page) => {
    const fitter = new Fitter(page);
    await at("#/fitting?seed=3&help=counts")(page);
    await fitter.begin();
    await fitter.does("Put it on over the bushing");
    await fitter.cut("88.5");
    await fitter.does("File and chamfer the end", "In until it touches");
    await fitter.toKeyway(60);
    await fitter.does("Insert the key", "Hang the strike by one screw");
    await page.getByRole("slider", { name: "Dial, seen from the side" }).press("Shift+ArrowLeft");
    for (let k = 0; k < 3; k++) await page.keyboard.press("PageUp");
    await fitter.does("Depth gauge on the cam");
  },
  service: async (page) => {
    await at("#/fitting?view=service&seed=5")(page);
    await press(page, "Have the door opened", "Read: Limits and torque", "Measure the lost motion");
  },
  "service-debrief": async (page) => {
    await at("#/fitting?view=service&seed=5")(page);
    await press(page, "Have the door opened", "Take the cover off", "Tighten to 1.1 Nm");
    await press(page, "Leave the site: show the debrief");
  },
  find: at("#/fitting?view=find&seed=3"),
  "zeroing-ring": at("#/zeroing?seed=5"),
  "zeroing-result": setZero,
  "zeroing-prove": async (page) => {
    await setZero(page);
    await page.getByRole("tab", { name: "Prove it" }).click();
  },
  "zeroing-play": async (page) => {
    await at("#/zeroing?seed=5")(page);
    await page.getByRole("tab", { name: "Find the play" }).click();
  },
  "handover-run": at(RUN),
  "handover-fitting": async (page) => {
    await at(`${RUN}&fit=first`)(page);
    await page.getByLabel("Washers, from the cam out").selectOption("flat, flat, spring");
    await press(page, "Hang it by one screw", "Tighten all screws", "Put it on by eye", "Tighten the ring");
    await page.getByLabel("Cut to, mm from the dial's back").fill("88.5");
    await press(page, "Saw off", "File and chamfer the end", "In until it touches");
  },
  "handover-locked-out": async (page) => {
    await at(RUN)(page);
    await new Handover(page).does("Measure the height", "Shut the door");
  },
  "handover-debrief": async (page) => {
    await at(RUN)(page);
    await new Handover(page).does("Measure the height", "Shut the door", "Look back");
  },
  change: at("#/handover?view=change&seed=5"),
  trouble: at("#/handover?view=trouble&profile=three-wheel&seed=6"),
  holdback: at("#/handover?view=holdback&seed=5"),
  "record-check": at("#/handover?view=record"),
  sheets: at("#/sheets"),
  "sheet-editor": async (page) => {
    await at("#/sheets")(page);
    await page.getByRole("button", { name: /Copy/ }).first().click();
    await page.locator("[data-act=toggle]").first().click();
  },
  sittings: at("#/sittings"),
  "sitting-instructions": (page) => openSheet(page, SHEET),
  "sitting-fitting": atStation("Dial to fit"),
  "sitting-find": atStation("Fit to judge"),
  "sitting-service": atStation("Service visit"),
  "sitting-station": (page) => start(page, SHEET),
  "sitting-result": async (page) => {
    await start(page, SHEET);
    await page.getByRole("button", { name: "Break off" }).click();
    await page.getByRole("button", { name: "End it" }).click();
  },
  "logbook-empty": at("#/logbook"),
  "logbook-attempts": loadDemo,
  "logbook-jobs": inDemo("jobs"),
  "logbook-sittings": inDemo("sittings"),
  "logbook-progress": inDemo("progress"),
  "logbook-hands": async (page) => {
    await at("#/logbook?view=files")(page);
    await page
      .locator("input[type=file]")
      .setInputFiles({ name: "Tavro.json", mimeType: "application/json", buffer: Buffer.from(handsBook()) });
    await page.getByText(/records added/).waitFor();
    await page.getByRole("link", { name: "Progress" }).click();
    await page.getByRole("region", { name: "Does it carry over?" }).waitFor();
  },
  "logbook-files": at("#/logbook?view=files"),
  desk: async (page) => {
    await at("#/desk")(page);
    await page
      .getByRole("button", { name: /demo class/i })
      .first()
      .click();
  },
  words: at("#/words"),
  setup: at("#/dial"),
  "setup-checks": (page) => dialAtChecks(page),
  "setup-print": at("#/dial?view=print"),
  "instructor-first": (page) => openClassroom(page, `#/instructor/first?token=${"a".repeat(43)}`),
  "instructor-classes": (page) => openClassroom(page, "#/instructor"),
  "instructor-code": (page) => openClassroom(page, "#/instructor/class?id=c&view=join"),
  "instructor-roster": (page) => openClassroom(page, "#/instructor/class?id=c&view=roster"),
  "instructor-board": openBoard,
  "instructor-board-watch": async (page) => {
    await openBoard(page);
    await page.getByRole("button", { name: "Watch Bo Ellery" }).click();
    await page.getByRole("region", { name: "What happened" }).waitFor();
  },
  "instructor-desk": (page) => openClassroom(page, "#/instructor/class?id=c&view=desk"),
  "instructor-erase": async (page) => {
    await openClassroom(page, "#/instructor/people");
    await page.getByRole("button", { name: "Records and data of Mibsy Rowe" }).click();
    await page.getByRole("button", { name: "Erase Mibsy Rowe" }).scrollIntoViewIfNeeded();
  },
  "instructor-cards": async (page) => {
    await openClassroom(page, "#/instructor/class?id=c&view=roster");
    await page.getByRole("button", { name: "Make join cards for everyone who has none" }).click();
    await page.getByRole("button", { name: "Print the cards" }).waitFor();
  },
  "instructor-assignments": (page) => openClassroom(page, "#/instructor/class?id=c&view=assignments"),
  "instructor-assignment": async (page) => {
    await openClassroom(page, "#/instructor/class?id=c&view=assignments&assignment=a3");
    await page.getByRole("button", { name: "Withdraw it" }).waitFor();
  },
  "instructor-results": (page) => openClassroom(page, "#/instructor/class?id=c&view=results"),
  "instructor-sitting": async (page) => {
    await openClassroom(page, "#/instructor/class?id=c&view=results&sitting=s1");
    await page.getByRole("region", { name: "Comments for the apprentice" }).waitFor();
  },
  "instructor-difficulty": (page) => openClassroom(page, "#/instructor/class?id=c&view=results&difficulty=a2"),
  "instructor-audit": (page) => openClassroom(page, "#/instructor/audit"),
  "instructor-keys": (page) => openClassroom(page, "#/instructor/keys"),
  "class-hand-up": async (page) => {
    await joinHere(page, new ClassPage(page));
    await page.goto("#/bench?seed=5");
    await page.getByRole("button", { name: "Ask for help" }).click();
    await page.getByText("Your hand is up.").waitFor();
  },
  "class-join": (page) => new ClassPage(page).open("#/join"),
  "class-joined": async (page) => {
    await joinHere(page, new ClassPage(page));
    await page.getByRole("link", { name: "Go to the start page" }).waitFor();
  },
  "class-no-network": async (page) => {
    const server = new ClassPage(page);
    await joinHere(page, server);
    server.isSilent = true;
    await page.goto("#/bench?seed=5");
    await dialLast(page);
    await page.getByRole("button", { name: "1 waiting, no network" }).waitFor();
  },
};

test.use({ timezoneId: "UTC", locale: "en-US", contextOptions: { reducedMotion: "reduce" } });

for (const [name, reach] of Object.entries(SCREENS)) {
  test(`looks as it was accepted: ${name}`, async ({ page }, { config }) => {
    skipWhereDrawnOtherwise(page, config);
    await page.clock.setFixedTime(NOW);
    await reach(page);
    await expectAccepted(page, name, { beginsAt: BEGINS_AT[name], masked: `${TIMES}, ${ADDRESSES}` });
  });
}
