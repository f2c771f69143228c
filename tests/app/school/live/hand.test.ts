import { expect, test } from "vitest";
import { type HandState, storedHand, storeHand } from "../../../../src/app/school/live/hand";

/** A page's storage. */
function storage() {
  const texts = new Map<string, string>();
  return {
    getItem: (key: string) => texts.get(key) ?? null,
    setItem: (key: string, text: string) => void texts.set(key, text),
    removeItem: (key: string) => void texts.delete(key),
  };
}

const HANDS: readonly HandState[] = [
  { isUp: false, wanted: null, news: null },
  { isUp: true, wanted: null, news: null },
  { isUp: false, wanted: "up", news: null },
  { isUp: true, wanted: "down", news: null },
];

test.each(HANDS)("the next page has the hand as this one left it: up $isUp, wanted $wanted", (hand) => {
  const store = storage();
  storeHand(hand, store);
  expect(storedHand(store)).toEqual(hand);
});

test("what somebody else stored is no hand", () => {
  const store = storage();
  store.setItem("gatefall.hand", "constructor");
  expect(storedHand(store)).toEqual(HANDS[0]);
});
