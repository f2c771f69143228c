import { type Evidence, evidenceIn, type Observation } from "./observation";
import type { LockCard } from "./trouble";

/** Ways of looking in the order of their cost, cheapest first, and what each is good for. */
const LOOKS: readonly { readonly has: Evidence | "try"; readonly say: string }[] = [
  { has: "rules", say: "Compare the written numbers with the rules: it costs no try." },
  { has: "turn-round", say: "Turn the dial all round: does it scrape, and is it as easy everywhere?" },
  { has: "push-pull", say: "Push and pull the dial: how far does it move?" },
  { has: "marks", say: "Read the four marks of the ring: are they all off by as much, or is the ring off center?" },
  { has: "pull", say: "Put the pull gauge on the dial: does the dial move with the hand at once?" },
  { has: "cam-left", say: "Read the cam after turning left: does the index say where the cam is?" },
  {
    has: "cam-right",
    say: "Read the cam after turning right: the difference of both sides is the lost motion. Compare it with the card.",
  },
  { has: "try", say: "Let the steady hand dial the numbers as written." },
  {
    has: "off-try",
    say: "Dial one number off on purpose, farther each time, to both sides. The middle of what opens is where that number really lies; half its width is what the lock takes.",
  },
];

const RESTS = {
  has: "rest-try",
  say: "Dial it as written with a rest before the last number, longer each time.",
} as const;
const ENOUGH =
  "Read what you have: which numbers have moved, which way, and does the cam agree with the card? Repeat a reading before you trust a tenth.";

/** What to look at next, for full help. It goes by what has been looked at, never by what is hidden. */
export function nextLook({ profile }: LockCard, log: readonly Observation[]): string {
  const seen = evidenceIn(log);
  const looks = profile.kind === "dial-encoder" ? [...LOOKS, RESTS] : LOOKS;
  const has = (wanted: Evidence | "try") =>
    wanted === "try" ? log.some(({ kind }) => kind === "try") : seen.has(wanted);
  return looks.find((look) => !has(look.has))?.say ?? ENOUGH;
}
