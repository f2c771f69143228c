import { RECORD_WORDS } from "../records/recordWords";
import { problemsOf, type Words } from "../wording/problem";

/** What a class server can answer instead of what was asked for. */
export const SCHOOL_WORDS = {
  ...RECORD_WORDS,
  "not-signed-in": ": you are not signed in here; sign in and try again",
  "not-allowed": ": this is not yours to do; ask the instructor of the class",
  "no-such-thing": ": there is nothing here under this address; go back and open it again",
  "wrong-sign-in": ": name or password is wrong; try again, or ask for a new link",
  "wait-first": ": too many tries; wait {seconds} s and try again",
  "link-not-valid": ": this link was used or has expired; ask for a new one",
  "login-taken": ": this sign-in name is taken; choose another",
  "from-elsewhere": ": this was sent from another page; open the class server's own page and try again",
  "too-large": ": this is larger than the server takes; send it in smaller parts",
  "server-failed": ": the server could not do this; nothing was changed; try again, and tell whoever runs the server",
} as const satisfies Words;

/** Problems of a class server's answers. */
export const schoolProblem = problemsOf(SCHOOL_WORDS);
