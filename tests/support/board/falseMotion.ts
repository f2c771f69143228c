import type { WireEvent } from "../../../src/realdial/wire/wireEvent";
import type { WireLine } from "../../../src/realdial/wire/wireLine";
import { WireReader } from "../../../src/realdial/wire/wireReader";
import { damaged, sentLines } from "./sentLines";

/** Each stretch from a hello on: where the dial was taken to be after each move, in steps since that hello. */
function stretches(events: readonly WireEvent[]): number[][] {
  const found: number[][] = [];
  let last = 0;
  let base = 0;
  for (const event of events) {
    if (event.type === "ready") {
      base = last;
      found.push([]);
    } else if (event.type === "moved") {
      // A power of two steps a turn: whole numbers, exactly.
      last = event.turns * 4096;
      found.at(-1)?.push(last - base);
    }
  }
  return found;
}

/** Whether what was sent since one of the hellos says these places, in this order, whatever else it says between. */
const isSaid = (places: readonly number[], sent: readonly WireLine[]): boolean =>
  sent.some((hello, from) => {
    if (hello.type !== "hello") return false;
    let next = 0;
    for (const { start, count } of sent.slice(from)) {
      if (start === hello.start && count - hello.count === places[next]) next += 1;
    }
    return next >= places.length;
  });

/**
 * One stretch of a board's life, its bytes damaged, read.
 *
 * @returns how many moves came of it, and the first stretch of places that undamaged lines do not say, with the bytes
 */
export function readDamaged(chance: () => number): { readonly moves: number; readonly falseMotion: string | null } {
  const sent = sentLines(chance, 3 + Math.floor(chance() * 12));
  const bytes = damaged(sent, 1 + Math.floor(chance() * 5), chance);
  const reader = new WireReader(0);
  const cut = Math.floor(chance() * bytes.length);
  const found = stretches([...reader.take(bytes.slice(0, cut), 1), ...reader.take(bytes.slice(cut), 2)]);
  const unsaid = found.find((places) => !isSaid(places, sent));
  const falseMotion = unsaid === undefined ? null : `${unsaid} of ${JSON.stringify(new TextDecoder().decode(bytes))}`;
  return { moves: found.flat().length, falseMotion };
}
