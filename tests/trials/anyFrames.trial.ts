import { tryAnyFrames } from "../support/film/anyFrames";
import type { Trial } from "./trial";

/*
 * A printed dial's camera, fed with anything: noise, stripes, shapes, pieces of pictures, sizes that are none, and pictures of a
 * dial at rest of which much is spoiled. No frame without a dial is read, and no dial at rest is seen to turn.
 */

const ROUND = 2000;

export const trial: Trial = {
  name: "frames of any content",
  run: async ({ chance, hasTime, pass, fail }) => {
    for (let round = 1; round === 1 || hasTime(); round++) {
      const { readings, wrong } = tryAnyFrames(chance, ROUND);
      if (wrong !== null) fail(`round ${round}: ${wrong}`);
      // Where nothing is read, nothing was tried.
      else if (readings === 0) fail(`round ${round}: no reading in ${ROUND} frames`);
      else pass();
    }
  },
};
