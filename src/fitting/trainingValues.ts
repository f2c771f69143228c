import table from "../../shared/fitting-values.json" with { type: "json" };
import { figuresOf } from "./dataValues";

/** Training values of the fitting exercise; what each is for is told in `shared/fitting-values.json`. */
export const FITTING = /* @__PURE__ */ figuresOf(table.values);
