import { writeFileSync } from "node:fs";
import { sheetJsonSchema } from "../../src/drill/sheet/sheetSchema";

/** Writes the published schema anew: `npm run schema`. A test tells when that is due. */
writeFileSync(
  new URL("../../shared/sheet.schema.json", import.meta.url),
  `${JSON.stringify(sheetJsonSchema(), null, 2)}\n`,
);
