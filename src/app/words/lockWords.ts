import * as draw from "./drawings/lock";
import { Tolerance } from "./drawings/work";
import type { WordGroup } from "./word";

/** The parts of a lock, from the dial inward. */
export const LOCK_WORDS: WordGroup = {
  id: "lock",
  title: "The lock",
  words: [
    {
      id: "dial",
      term: "Dial",
      text: "The round face with numbers that you turn by hand. You never see the wheels behind it: the dial is all you have.",
      picture: draw.Dial,
    },
    {
      id: "graduation",
      term: "Graduation",
      text: "The step from one line of the dial to the next. Distances on a dial are counted in graduations; most dials have 100 to a turn.",
      picture: draw.Graduation,
    },
    {
      id: "dial-ring",
      term: "Dial ring",
      text: "The fixed ring round the dial. It carries the marks that you read the dial against.",
      picture: draw.Indexes,
    },
    {
      id: "opening-index",
      term: "Opening index",
      text: "The mark at the top of the ring. You dial every combination to this mark when you want to open.",
    },
    {
      id: "changing-index",
      term: "Changing index",
      text: "A second mark on the ring, beside the top. You use it only to change a combination.",
    },
    {
      id: "spindle",
      term: "Spindle",
      text: "The rod through the door that joins the dial to the drive cam. It is cut to length, so the door is measured first.",
      picture: draw.Spindle,
    },
    {
      id: "drive-cam",
      term: "Drive cam",
      text: "The disc at the inner end of the spindle. It turns with the dial and drives the last wheel; its own notch lets the lever nose drop in.",
      picture: draw.DriveCam,
    },
    {
      id: "wheel",
      term: "Wheel",
      text: "A disc with one gate in its rim. Each wheel carries one number of the combination.",
      picture: draw.Wheel,
    },
    {
      id: "wheel-pack",
      term: "Wheel pack",
      text: "All wheels on one post. The cam drives the last wheel, that one drives the next, and so on to wheel 1, which carries the first number.",
      picture: draw.WheelPack,
    },
    {
      id: "fly",
      term: "Fly",
      text: "A small piece on a wheel that a pin pushes along a little before the wheel follows. It gives each joint a full turn of free play.",
      picture: draw.Fly,
    },
    {
      id: "free-play",
      term: "Free play",
      text: "How far one wheel turns back before it moves the next. With one turn of free play at each of three joints, wheel 1 moves with the dial only after three turns one way.",
    },
    {
      id: "gate",
      term: "Gate",
      text: "The notch in the rim of a wheel. The lock opens when every gate lies under the fence at the same moment.",
      picture: draw.Gate,
    },
    {
      id: "fence",
      term: "Fence",
      text: "The bar that falls into the gates. While one gate is out of line, the fence rests on that rim and holds the lever up.",
      picture: draw.Fence,
    },
    {
      id: "gate-tolerance",
      term: "Gate tolerance",
      text: "A gate is a little wider than the fence. The tolerance is how far a wheel may be off, either way, and still open: 1 to 1.5 graduations on the practice locks.",
      picture: Tolerance,
    },
    {
      id: "lever",
      term: "Lever and lever nose",
      text: "The lever carries the fence. When the gates are in line, its nose drops into the notch of the cam, and the dial can pull the bolt back.",
      picture: draw.LeverNose,
    },
    {
      id: "bolt",
      term: "Bolt and strike",
      text: "The bolt locks the door. Thrown, it reaches into the strike, the plate or hole in the frame.",
      picture: draw.Strike,
    },
    {
      id: "positive-stop",
      term: "Positive stop",
      text: "The place where the dial is blocked because the bolt is fully back. Do not force the dial past it.",
      picture: draw.PositiveStop,
    },
    {
      id: "encoder-lock",
      term: "Encoder lock",
      text: "An electronic lock that is turned by a dial. It has no wheels: it reads how far the spindle turns, so it must learn where zero is.",
    },
  ],
};
