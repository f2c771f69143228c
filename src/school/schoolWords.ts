import { MOTION_WORDS } from "../records/motionError";
import { RECORD_WORDS } from "../records/recordWords";
import { SOURCES_WORDS } from "../records/sourcesWords";
import { problemsOf, type Words } from "../wording/problem";

/** What a class server can answer instead of what was asked for. */
export const SCHOOL_WORDS = {
  ...RECORD_WORDS,
  ...MOTION_WORDS,
  ...SOURCES_WORDS,
  "not-signed-in": ": you are not signed in here; sign in and try again",
  "not-allowed": ": this is not yours to do; ask the instructor of the class",
  "no-such-thing": ": there is nothing here under this address; go back and open it again",
  "wrong-sign-in": ": name or password is wrong; try again, or ask for a new link",
  "wait-first": ": too many tries; wait {seconds} s and try again",
  "link-not-valid": ": this link was used or has expired; ask for a new one",
  "login-taken": ": this sign-in name is taken; choose another",
  "from-elsewhere": ": this was sent from another page; open the class server's own page and try again",
  "too-large": ": this is larger than the server takes; send it in smaller parts",
  "not-compressed-so": ": what was sent cannot be unpacked; send it as gzip or as it is",
  "try-again": ": the server’s database does not answer just now; nothing is lost, and it is sent again by itself",
  "not-ended": ": this work has not ended yet; it is sent when it has",
  "not-joined-here": ": whoever this is of never joined the class at this bench; join, and it is sent again",
  "motion-not-wanted": ": there is a motion beside a record that says none is kept",
  "other-hash": ": the record of this sitting is not the one that its hash was made from",
  changed: ": another record with this id was received before; the first one stays",
  "server-failed": ": the server could not do this; nothing was changed; try again, and tell whoever runs the server",
} as const satisfies Words;

/** Problems of a class server's answers. */
export const schoolProblem = problemsOf(SCHOOL_WORDS);
