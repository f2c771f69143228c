/** What is needed for a printed dial, in general words. */
export const PRINTED_PARTS = [
  "Two sheets of plain paper, A4 or Letter, and a printer. Heavier paper lies flatter.",
  "A round lid of 100 to 140 mm with a flat top, such as that of a large jar.",
  "A knob of at most 55 mm across: a bottle cap, a cork or a drawer knob.",
  "A pin or a screw with a large washer, so that the lid turns about its middle.",
  "Glue, tape, scissors or a knife, a ruler.",
  "A laptop, a phone or a webcam with its camera, and books or a stand to hold it.",
] as const;

/** What to be careful about. */
export const CAUTIONS = [
  "Cut on a board, away from your hand. Cover the point of the pin. If you may not use a knife, ask your instructor.",
  "Use a loose lid or a practice lock on a training door. Fix nothing on a door or lock in use.",
  "A recording of a dial is its combination. Turn only a combination that you may record.",
  "Fix the camera so that it cannot fall. Keep lamps and cables out of your way.",
] as const;

/** Said of what was not tried. */
export const NOT_TRIED =
  "We have followed this dial in rendered films and run the encoder’s program in a simulator. We have not tried a real print, camera, board or knob. Tell your instructor what you find; the three checks of the setup measure your own.";

/** What is needed for an encoder, in general words. */
export const ENCODER_PARTS = [
  "A small 8-bit board with an ATmega328P at 16 MHz and a USB serial port.",
  "An optical encoder with two lines, 600 lines a turn, 5 V: 2400 steps a turn, 24 for each graduation of a dial with 100.",
  "A knob of 40 to 60 mm with some weight that fits the shaft.",
  "A push button that closes: it records a stop while you zero a dial.",
  "A block of wood or metal that holds the encoder, and a clamp for the table.",
  "Wires, and a USB cable that carries data.",
] as const;

/** How the encoder is put together. */
export const ENCODER_STEPS = [
  "Unplug the board. Read the encoder’s own sheet: check its supply and the colors of its wires.",
  "Wire it as drawn: supply to 5 V, ground to GND, line A to D2, line B to D3. The button goes between D4 and GND. No resistors are needed.",
  "Save the program’s image and put it on the board with a loader such as avrdude. Your board’s own sheet says which programmer, port and speed to name. Its source, and how to build it, are in the folder shared/firmware of the project.",
  "Fix the encoder in its block and clamp the block to the table. Only the knob may turn.",
  "Plug the board in. Set it up in a desktop browser that has serial ports.",
] as const;

/** What to be careful about with a board. */
export const ENCODER_CAUTIONS = [
  "Unplug the board before you change a wire.",
  "If your encoder needs more than 5 V, its outputs must be open-collector. Otherwise they destroy the board.",
] as const;
