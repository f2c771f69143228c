import { type Problem, ProblemError, problemsOf, type Words, wordsOf } from "../../../../wording/problem";
import { messageOf } from "../../../parts/page/messageOf";

/** What can be wrong with a device in the hand, and what to do then. */
const DEVICE_WORDS = {
  "no-serial":
    ": This browser cannot open a serial port. Use a desktop browser that can, on a page served by https or from this computer",
  "no-midi":
    ": This browser cannot hear MIDI devices. Use a browser that can, on a page served by https or from this computer",
  "no-orientation": ": This browser does not tell how the device is turned. Open this page on a phone, served by https",
  "no-gamepads": ": This browser does not read game controllers. Use a current browser",
  "none-chosen": ": You chose no port. Press Connect again, and choose the port of your board",
  refused:
    ": The browser refused access to the {device}. Allow it in the browser's settings for this site, then connect again",
  "port-busy": ": The port is open in another page or program. Close it there, then connect again",
  "second-page":
    ": Another page of Gatefall holds the dial. Disconnect it there or close that page, then connect again",
  unplugged:
    ": The {device} was unplugged. Plug it in again. If it does not connect by itself, connect it. Then dial from the start",
  "switched-off":
    ": The {device} was switched off or unplugged. Switch it on and press a button on it. If it does not connect by itself, connect it. Then dial from the start",
  back: ": {device}: connected again. What you turned meanwhile is not counted: dial from the start",
  "no-hello":
    ": The port is open, but no encoder board answers. Connect again and choose another port. Or put the program on the board: “Print and build a dial” says how",
  silent: ": The board has stopped sending. Check its cable, or connect again",
  flooded:
    ": The board sent far more than an encoder does, so this page let go of it. Reset the board, or put its program on it again: “Print and build a dial” says how. Then connect again, and dial from the start",
  newer:
    ": The program on the board is newer than this page (version {version} of its lines). Reload the page, or put the program from “Print and build a dial” on the board",
  restarted: ": The board restarted. What you turned meanwhile is not counted: dial from the start",
  missed:
    ": {steps:step|steps} of the encoder could not be read, so the dial may be off. Turn slower, check its wires, and dial from the start",
  leapt:
    ": The board counted {steps:step|steps} at once, more than a hand can turn, so they were left out. Check its wires, and dial from the start",
  gap: ": Nothing was heard of the {device} for {seconds} s while it turned. If you turned back meanwhile, dial from the start",
  hidden:
    ": This page was in the background and did not see the {device}. If you turned it meanwhile, dial from the start",
  "no-sensor": ": This device does not tell how it is turned. Open this page on a phone",
  drift: ": At rest the phone drifts by {graduations} graduations a minute, which is left out",
  "no-controller": ": No game controller is seen yet. Press a button on it",
  "no-inputs": ": No MIDI device is plugged in. Plug one in",
  nothing: ": Nothing came from the knob. Turn the one you want to use, one whole turn each way",
  "same-both-ways": ": Both turns sent the same. Turn once left, then once right",
  "more-than-one": ": More than one control moved. Turn the knob alone",
  "has-ends":
    ": This knob has ends or springs back, so it cannot turn a dial. Use one that turns without end, or turn a stick round its rim",
  uneven: ": The two turns were not of one size. Turn one whole turn each way, at an even pace",
  insecure:
    ": This page is not served by https, so the browser gives it no camera. Open it by https or from this computer",
  "no-camera-here": ": This browser does not give a camera's pictures to this page. Use a current browser",
  "no-camera": ": No camera is found. Plug one in, then connect again",
  "camera-busy":
    ": Another program or page uses the camera. Close it there or choose another camera, then connect again",
  "camera-hidden":
    ": This page was in the background, so its camera was turned off. If it does not connect by itself, connect it. Then dial from the start",
  "no-pictures":
    ": I lost sight of your dial: no pictures of the camera are read any more. Close what else uses the camera. If that does not help, connect again",
  unused: ": No dial was on the screen for some minutes, so the camera was turned off. To go on, connect it",
  "follower-failed": ": What finds the dial in the picture has stopped. Connect again; then dial from the start",
  "set-to":
    ": The dial on the screen is at {number}. Turn your knob until it shows {number}, then press its button, or the one here. Until then it does not turn that dial",
  "gone-on":
    ": The dial on the screen was moved by something else, or is another one. Your knob goes on from where it is: read the number on the screen",
  marked: ": What you are doing is marked in its record: its turns are in doubt",
  "come-to": ": Turn your dial to {number}, where the dial on the screen is. It takes over there",
  "sight-lost":
    ": I lost sight of your dial, and went on at the number on the screen. What you turned in between is not counted. If you are not sure of your turns, dial from the start",
  "no-sheet": ": I lost sight of your dial: the sheet is not in the picture. Show all four of its corners",
  "markers-covered": ": I lost sight of your dial: the corners of the sheet are covered. Uncover them",
  "corner-covered": ": I lost sight of your dial: the sheet's {corner} corner is covered. Uncover it",
  "corner-unseen": ": The sheet's {corner} corner is covered",
  "too-dark": ": I lost sight of your dial: the picture is too dark. Bring light",
  "disc-covered": ": I lost sight of your dial: your hand covers too much of the disc. Hold it by the knob",
  "disc-wobbles": ": Your dial wobbles too much to be read well. Glue the disc flat, and square to what it turns on",
  "disc-lost": ": I lost sight of your dial: the disc is not where the sheet has it. Set it on the sheet's middle",
  ambiguous:
    ": I lost sight of your dial: I cannot tell its angle for sure. Bring the camera nearer and in front of it, bring light, turn slower, and hold it by the knob",
  "too-fast": ": I lost sight of your dial: it turns faster than the camera sees. Turn slower, or bring light",
  "surroundings-lost":
    ": I lost sight of your dial: I do not recognize what is around it. Put the camera back, or set the dial up again",
  "dial-covered":
    ": I lost sight of your dial: your hand covers too much of its face. Hold it by the knob, from the side",
  jumped: ": I lost sight of your dial: it moved farther than I could follow. Turn slower",
  "not-practice": ": The camera stays off. It follows only a practice lock whose combination may be recorded",
  "set-up-again": ": Your dial is being set up again. Until that is done it turns nothing on the screen",
  "moves-kept":
    ": You chose to keep no motions, and the record of this exercise is made of them. Turn the dial on the screen, or set your dial up again and let motions be kept",
  failed: ": {device} could not be opened: {reason}",
} as const satisfies Words;

/** Problems of devices. */
export const deviceProblem = problemsOf(DEVICE_WORDS);

/** What is wrong with a device, as sentences. */
export const deviceText = (problem: Problem): string => `${wordsOf(problem, DEVICE_WORDS)}.`;

/** A device that could not be opened. */
export class DeviceError extends ProblemError {
  override readonly name = "DeviceError";
  protected readonly words = DEVICE_WORDS;
}

/** Why a device could not be opened. @param title - of the device */
export const openingProblem = (error: unknown, title: string): Problem =>
  error instanceof DeviceError
    ? error.problem
    : deviceProblem("failed", [], { device: title, reason: messageOf(error) });
