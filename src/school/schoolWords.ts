import { MOTION_WORDS } from "../records/motionError";
import { RECORD_WORDS } from "../records/recordWords";
import { SOURCES_WORDS } from "../records/sourcesWords";
import { problemsOf, type Words } from "../wording/problem";

/** What a class server can answer instead of what was asked for. */
export const SCHOOL_WORDS = {
  ...RECORD_WORDS,
  ...MOTION_WORDS,
  ...SOURCES_WORDS,
  "no-answer": ": the class server does not answer; check that it runs and that this device is on its network",
  "not-signed-in": ": you are not signed in here; sign in and try again",
  "not-allowed": ": you may not do this; ask the instructor of the class or the head of the school",
  "no-such-thing": ": there is nothing here under this address; go back and open it again",
  "wrong-sign-in":
    ": the sign-in name or the password is wrong; try again, or ask the head of your school for a link to a new password",
  "wait-first": ": too many tries; wait {seconds} s and try again",
  "link-not-valid": ": this link was used or has expired; ask for a new one",
  "wrong-password": ": this is not your password; enter the one that you sign in with now",
  "last-head": ": this is the only head of the school; invite another head first",
  "address-cut": ": a part of this address is missing; scan the QR code again, or copy the whole link",
  "code-not-valid": ": this class code is not valid now; check it, or ask your instructor for the current one",
  "card-code-not-valid":
    ": this code is not on a card that is valid now; check its sixteen letters and digits, or ask your instructor for a new card",
  "card-not-valid": ": this card is not valid any more; ask your instructor for a new one",
  "wrong-pin": ": this name has a PIN, and this is not it; enter the PIN, or ask your instructor to remove it",
  "nobody-joined": ": nobody has joined at this bench; join with a class code or a card",
  "class-ended": ": this class has ended; choose another class",
  "name-taken": ': "{name}" is on this roster already; add something that tells the two apart',
  "several-people":
    ': several people of the school are called "{name}"; choose the one you mean from the list of the school',
  "no-name": ": this row has no name; fill it in, or remove the row",
  twice: ": this name is in line {line} too; remove one of them, or add something that tells the two apart",
  "unreadable-name":
    ": this name has hidden characters, or no letters and digits; type it again by hand, since a copied text may bring some along",
  "hidden-characters":
    ": this text has hidden characters that change how it is shown; type it again by hand, since a copied text may bring some along",
  "too-many-rows": ": this file has more than {most} rows; split it",
  "changed-meanwhile":
    ": someone changed this meanwhile: the name is {name}, the extra time {extraTime} % (change {version}); check it, then make your change again",
  "roster-changed": ": the roster was changed since you looked at the preview; look at it again",
  "login-taken": ": this sign-in name is taken; choose another",
  "from-elsewhere": ": this was sent from another page; open the class server's own page and try again",
  "too-large": ": this is larger than the server takes; send it in smaller parts",
  "not-compressed-so": ": what was sent cannot be unpacked; send it as gzip or as it is",
  "try-again":
    ": the server’s database does not answer just now; wait a minute and try again (a bench sends its records again by itself)",
  "not-text": ": it has a hidden character that cannot be stored; take it out",
  "not-ended": ": this work has not ended yet; it is sent when it has",
  "not-joined-here": ": its person has not joined the class at this bench; join, then press Send now",
  "motion-not-wanted": ": there is a motion beside a record that says none is kept; send the record without it",
  "other-hash": ": the record of this sitting is not the one that its hash was made from",
  changed: ": another record with this id was received before; the first one stays",
  "in-place-of-sitting":
    ": it has the id of a sitting that the class server gave out, and is none; save it as a file and show it to your instructor",
  "ends-before-it-begins": ": it ends before it begins; set a later end",
  "left-class": ": {name} has left this class; take the name off this sheet, or put it back on the roster first",
  "sheet-not-read": ": the sheet cannot be used: {why}; fix it in the sheet editor and try again",
  "sheet-in-use": ": somebody has begun this sheet already; end it early, and assign the changed sheet again",
  "begun-already": ": somebody has begun this already, so it cannot be withdrawn; end it early",
  "assignment-changed":
    ": someone changed this meanwhile (change {version}); look at it again, then make your change again",
  "not-begun-yet": ": this cannot be begun yet; come back when its time has come",
  "assignment-over": ": the time for this is over; ask your instructor",
  "attempts-used": ": you have used every attempt at this; ask your instructor for another one",
  "id-taken": ": this id is taken by another sitting; begin it again",
  "try-sent-otherwise": ": another try was received in this place before; the first one stays",
  "server-failed": ": the server could not do this; nothing was changed; try again, and tell whoever runs the server",
} as const satisfies Words;

/** Problems of a class server's answers. */
export const schoolProblem = problemsOf(SCHOOL_WORDS);
