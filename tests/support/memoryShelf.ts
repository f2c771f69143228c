import { SittingShelf } from "../../src/app/sittings/session/sittingShelf";

/** A shelf on a map: what a browser would keep. */
export function memoryShelf(kept = new Map<string, string>()): SittingShelf {
  return new SittingShelf({
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => {
      kept.set(key, text);
    },
    removeItem: (key) => {
      kept.delete(key);
    },
  });
}

/** A shelf in a browser that keeps nothing. */
export function refusingShelf(): SittingShelf {
  const refuse = () => {
    throw new Error("nothing is kept here");
  };
  return new SittingShelf({ getItem: refuse, setItem: refuse, removeItem: refuse });
}
