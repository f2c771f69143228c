import { test } from "./classServer";
import { expectLateAndSigned, liveClass } from "./liveClass";

// A server of its own comes first, and a test that ends without network after its time.
test.setTimeout(150_000);

test("an instructor sees three benches live; a test that loses the network comes late, marked so and signed", async ({
  page,
  browser,
  classServer,
}) => {
  expectLateAndSigned(await liveClass(page, browser, classServer));
});
