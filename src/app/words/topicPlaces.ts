import type { Topic } from "../../drill/questions/question";

/** Where the subject of some questions is taught. */
export interface TopicPlace {
  /** What the questions are about, as a learner says it. */
  readonly title: string;
  /** Ids of words, those to read first first. */
  readonly words: readonly string[];
  /** Titles of lessons; none where words and the lock's papers are all there is. */
  readonly lessons: readonly string[];
}

/** Every subject of the questions, with its place. */
export const TOPIC_PLACES: Readonly<Record<Topic, TopicPlace>> = {
  "turn-counting": {
    title: "Counting turns",
    words: ["arrival", "turning", "stop", "stop-error", "overshoot", "going-round-again", "too-many-turns"],
    lessons: ["Round and round", "Three, not four", "Past it", "Talk to me", "Round again, when you may"],
  },
  "wheel-pack": {
    title: "The wheel pack",
    words: ["wheel-pack", "wheel", "fly", "free-play", "gate", "gate-tolerance", "fence", "lever", "positive-stop"],
    lessons: ["Three, not four", "Whole combination, whole hand", "Locks of every kind"],
  },
  zeroing: {
    title: "Setting zero",
    words: ["zero", "lost-motion", "deviation", "spread", "opening-index"],
    lessons: ["Where is zero"],
  },
  "choosing-combinations": {
    title: "Choosing combinations",
    words: ["choosing-numbers", "combination", "graduation"],
    lessons: ["Numbers for a stranger"],
  },
  proving: {
    title: "Proving a combination",
    words: ["proof", "spin-off", "verdict", "free-play", "positive-stop"],
    lessons: ["Change and prove", "Changing week"],
  },
  egress: { title: "The way out", words: ["egress", "written-instructions"], lessons: ["First handover"] },
  records: {
    title: "Records",
    words: ["record", "verdict", "sitting", "written-instructions"],
    lessons: ["First handover"],
  },
  changing: {
    title: "Changing a combination",
    words: ["change-key", "changing-index", "opening-index", "gate-tolerance", "proof"],
    lessons: ["Changing week"],
  },
  trouble: {
    title: "Finding what is wrong",
    words: ["defect", "opening-index", "lost-motion", "gate-tolerance", "zero"],
    lessons: ["Trouble hour", "Round again, when you may"],
  },
  handover: {
    title: "Handing a door over",
    words: ["handover", "holder", "holdback", "egress", "proof", "record"],
    lessons: ["First handover"],
  },
  fitting: {
    title: "Fitting a lock",
    words: [
      ...[
        "spindle",
        "lead",
        "clearance",
        "rub",
        "spline-key",
        "key-seat",
        "torque",
        "thread-locker",
        "washers",
        "end-play",
      ],
      ...["ring-off-center", "bushing", "parallax", "alignment", "dial-ring", "reading", "bolt"],
    ],
    lessons: ["Fitted well, fitted badly"],
  },
  service: {
    title: "Service",
    words: ["service-visit", "service", "torque", "batteries", "lockout", "out-of-service"],
    lessons: ["Service round"],
  },
  instructions: {
    title: "The written instructions",
    words: ["written-instructions", "fire-door", "gate-tolerance"],
    lessons: [],
  },
};
