import type { Assembly } from "../../../fitting/assembly";
import { checkLabel } from "../../../fitting/fitWords";
import type { NextStep } from "../../../fitting/teaching/nextStep";
import { countText } from "../../../wording/amountWords";

/** What to do, and why. */
interface StepWords {
  readonly say: string;
  readonly why: string;
}

type PlainStep = Exclude<NextStep["step"], "cut-spindle" | "screw-dial" | "check">;

const PLAIN: Readonly<Record<PlainStep, StepWords>> = {
  "start-again": { say: "Read the debrief, then start again.", why: "These parts cannot become a good lock any more." },
  "replace-spindle": { say: "Take the spare spindle.", why: "This one is bent, too short, stripped or glued." },
  "dress-spindle": { say: "File and chamfer the sawn end.", why: "A burr does not start in the cam's thread." },
  "take-cover": { say: "Take the cover off.", why: "What comes next is under it." },
  "take-key": { say: "Remove the key.", why: "It holds the dial, and the dial must move." },
  "take-dial": { say: "Take the dial out.", why: "What comes next is behind it." },
  "put-washers": {
    say: "Choose two flat washers, then the spring.",
    why: "They take the end play away, and a flat one next to the cam keeps the dial light.",
  },
  "take-body": { say: "Take the body off.", why: "The washers are wrong, and they go in with the body off." },
  "hang-body": { say: "Hang the lock body by one screw.", why: "It can still be aligned." },
  "tighten-body": { say: "Tighten all screws of the body.", why: "By one screw it tilts under the bolt." },
  "put-ring": { say: "Put the ring on over the bushing.", why: "The bushing centers it on the spindle." },
  "loosen-ring": { say: "Loosen the ring.", why: "It is off center, so each index reads wrong by its own amount." },
  "take-ring": { say: "Take the ring off.", why: "It is off center, so each index reads wrong by its own amount." },
  "tighten-ring": { say: "Tighten the ring.", why: "Its screws are under the dial." },
  "put-key": { say: "Insert the key.", why: "Gap and keyway are both right here." },
  "drive-key": { say: "Drive the key home.", why: "A key that stands out rides on the lever." },
  "screw-key": { say: "Turn the key's screw firmly.", why: "Lightly it works loose; hard it strips." },
  "secure-key": {
    say: "Put a drop of thread locker on the key's screw.",
    why: "There and nowhere else, before the screw is tight.",
  },
  "hang-strike": { say: "Hang the strike by one screw.", why: "Its height is adjusted before the others go in." },
  "raise-strike": { say: "Move the strike up 0.5 mm.", why: "The bolt binds on the upper edge of the hole." },
  "lower-strike": { say: "Move the strike down 0.5 mm.", why: "The bolt binds on the lower edge of the hole." },
  "loosen-strike": { say: "Loosen the strike.", why: "The bolt binds, and a tight strike does not move." },
  "tighten-strike": { say: "Tighten the strike.", why: "The bolt goes in freely at this height." },
  "put-strap": { say: "Put the wrist strap on.", why: "A touch without it can harm the board, and nothing shows it." },
  "plug-cable": { say: "Plug the encoder's cable in.", why: "The board looks for its encoder when power comes." },
  "pull-cable": { say: "Pull the encoder's cable.", why: "The board is harmed, and its wires hold it." },
  "connect-battery": { say: "Connect the battery, red lead to plus.", why: "The other way round blows the fuse." },
  "disconnect-battery": {
    say: "Disconnect the battery.",
    why: "Its leads are reversed, or the board came to power without its encoder, or it is harmed.",
  },
  "replace-fuse": { say: "Replace the fuse.", why: "It is blown: the board has no power." },
  "replace-board": { say: "Replace the board.", why: "Static has harmed it." },
  "put-cover": { say: "Put the cover on.", why: "Every check under it is made." },
  declare: { say: "Say that the dial is fitted.", why: "Everything is in place, and every check is made." },
};

/** Turns and graduations as one counts them at the dial. */
function turnsText(by: number, perTurn: number): string {
  const whole = Math.round(Math.abs(by));
  const turns = Math.floor(whole / perTurn);
  const rest = whole % perTurn;
  const parts = [
    ...(turns > 0 ? [countText(turns, "turn")] : []),
    ...(rest > 0 || turns === 0 ? [countText(rest, "graduation")] : []),
  ];
  return `${by < 0 ? "out" : "in"} ${parts.join(" and ")}`;
}

/** The next wise step in words. @param perTurn - graduations of the dial */
export function nextStepWords(next: NextStep, now: Assembly, perTurn: number): StepWords {
  switch (next.step) {
    case "cut-spindle":
      return { say: `Cut the spindle to ${next.to_mm.toFixed(1)} mm.`, why: "Then it ends at the face of the cam." };
    case "screw-dial":
      return {
        say: `Screw the dial ${turnsText(next.by, perTurn)}.`,
        why: "There the gap is right, and the right keyway lines up.",
      };
    case "check":
      return { say: `Check: ${checkLabel(next.check, now).toLowerCase()}.`, why: "A mistake shows now or in use." };
    default:
      return PLAIN[next.step];
  }
}
