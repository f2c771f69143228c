import table from "../../../shared/trouble-values.json" with { type: "json" };
import { figuresOf } from "../../fitting/dataValues";

/** Sizes of the trouble bench's older defects; what each is for is told in `shared/trouble-values.json`. */
export const TROUBLE = /* @__PURE__ */ figuresOf(table.values);
