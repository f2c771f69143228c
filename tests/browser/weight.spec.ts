import { pageWeight } from "../bench/pageWeight";
import { expect, test } from "./page";

/*
 * What a first visit fetches, by bytes and not by the clock. A page that grows over its budget fetches something that nobody
 * sees at first: it should come later (`fetchedLater`, `onFirstSign`), or the budget should be raised with the reason.
 */

/**
 * The aim for both is 150 until they are drawn; gzip of another version may differ by a little. One more for the start page:
 * stand-ins for the typeface, which keep it from jumping on phones and on computers with free typefaces alone. One more for
 * the bench in all: every record says what turned the dial and why its turns are in doubt, and coarse steps are not judged. A half more for the bench
 * until it is drawn: what a hand began of the next attempt is of that one, so that no motion is kept of it that must not be. Two tenths
 * more: the app looks whether a class server sent it, and names the files of a bench of a class and of its instructor. One and a half
 * more in all: what a person of a class did is marked to be sent in the transaction that stores it. A tenth
 * more in all: a sitting may be one that a class server gave.
 */
const PAGES = [
  { name: "the start page", hash: "#/start", drawn: "#root > main .start-go", untilDrawn_kB: 98, inAll_kB: 102 },
  { name: "the bench", hash: "#/bench", drawn: "#root > main [role=slider]", untilDrawn_kB: 150.7, inAll_kB: 252.6 },
];

for (const { name, hash, drawn, untilDrawn_kB, inAll_kB } of PAGES) {
  test(`a first visit to ${name} fetches no more script and style than it needs, and nothing jumps`, async ({
    browser,
    baseURL,
  }) => {
    const weight = await pageWeight(browser, baseURL ?? "", hash, drawn);
    expect(weight.untilDrawn_kB).toBeGreaterThan(60);
    expect(weight.untilDrawn_kB).toBeLessThanOrEqual(untilDrawn_kB);
    expect(weight.inAll_kB).toBeLessThanOrEqual(inAll_kB);
    expect(weight.shift).toBeLessThanOrEqual(0.02);
  });
}
