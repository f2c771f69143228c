import * as draw from "./drawings/dialing";
import { Zero } from "./drawings/work";
import type { WordGroup } from "./word";

/** What the hand does, and what can go wrong. */
export const DIALING_WORDS: WordGroup = {
  id: "dialing",
  title: "Dialing",
  words: [
    {
      id: "combination",
      term: "Combination",
      text: "The numbers that open a lock, in their order. In this trainer the combination is always on the screen.",
    },
    {
      id: "turning",
      term: "Turning left, turning right",
      text: "Left is counter-clockwise as you face the dial, right is clockwise. Each number is dialed in one of the two.",
      picture: draw.Turning,
    },
    {
      id: "reading",
      term: "Reading",
      text: "The number that the dial shows at an index. Read it with your eye straight in front of the dial.",
    },
    {
      id: "run",
      term: "Run",
      text: "Turning in one direction, from one stop to the next. Small wobbles belong to the run.",
    },
    {
      id: "arrival",
      term: "Arrival",
      text: "Each time the number comes to the index during a run. Four arrivals means: pass it three times and stop on it the fourth time.",
      picture: draw.Arrivals,
    },
    {
      id: "stop",
      term: "Stop",
      text: "Where a run ends and you turn back. The wheel stays where the stop left it. In zeroing a stop is what you record.",
      picture: draw.Stop,
    },
    {
      id: "stop-error",
      term: "Stop error",
      text: "How far a stop is from its number, in graduations. Plus means you ran past, minus means you stopped short.",
      picture: draw.StopError,
    },
    {
      id: "overshoot",
      term: "Overshoot: ran past, came back",
      text: "You ran past when you stopped beyond the number. Coming back does not help on a wheel pack: the dial comes back, the wheel stays. Start over.",
      picture: draw.CameBack,
    },
    {
      id: "stopped-short",
      term: "Stopped short",
      text: "You stopped before the number. As long as you have not turned back, you can still go on to it.",
    },
    {
      id: "too-many-turns",
      term: "Too few, too many turns",
      text: "Too few turns leave a wheel behind; too many carry the wheel before off its number. On a wheel pack only the first number takes extra turns.",
    },
    {
      id: "extra-turnback",
      term: "Extra turnback",
      text: "You turned back for a moment in the middle of a run. It is a fault even when the count was right.",
    },
    {
      id: "going-round-again",
      term: "Going round again",
      text: "After an overshoot you keep turning the same way and stop on the number next time. Do that only on a lock whose written instructions allow it.",
    },
    {
      id: "draw",
      term: "Draw",
      text: "The last turn, after the last number: it drops the lever nose into the cam and pulls the bolt back.",
      picture: draw.Draw,
    },
    {
      id: "spin-off",
      term: "Spin off",
      text: "Turn the dial at least four full turns one way after the bolt is thrown. It carries every wheel off its number: without it the lock is not secure.",
      picture: draw.SpinOff,
    },
    {
      id: "lockout",
      term: "Wrong-try delay",
      text: "After several wrong tries an electronic lock has a wrong-try delay. Wait without turning the dial, then dial once, with care.",
    },
  ],
};

/** Where zero is, and how well it is known. */
export const ZERO_WORDS: WordGroup = {
  id: "zeroing",
  title: "Zeroing and measuring",
  words: [
    {
      id: "zero",
      term: "Zero",
      text: "The place from which an encoder lock counts. You set it from both directions, so that the lock knows what your dial shows.",
      picture: Zero,
    },
    {
      id: "lost-motion",
      term: "Lost motion",
      text: "How far the dial turns before the cam follows. It shows as the difference between a zero set turning right and one set turning left.",
      picture: draw.LostMotion,
    },
    {
      id: "deviation",
      term: "Deviation and mean",
      text: "A deviation is how far one stop lies from the index. The mean is the average of several: one stop alone says little.",
    },
    {
      id: "spread",
      term: "Spread",
      text: "How far your stops lie apart. A small spread means a steady hand, even where all stops are off by the same amount.",
      picture: draw.Spread,
    },
  ],
};
