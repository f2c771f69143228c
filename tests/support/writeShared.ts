import { writeFileSync } from "node:fs";
import { lessonGlance } from "../../src/drill/course/lessonGlance";
import { SHIPPED_COURSE } from "../../src/drill/course/shippedCourse";
import { sheetJsonSchema } from "../../src/drill/sheet/sheetSchema";

const write = (name: string, value: unknown) =>
  writeFileSync(new URL(`../../shared/${name}`, import.meta.url), `${JSON.stringify(value, null, 2)}\n`);

/** Writes anew what is made from the code: `npm run schema`. Tests tell when that is due. */
write("sheet.schema.json", sheetJsonSchema());
write("lessons.json", SHIPPED_COURSE.map(lessonGlance));
