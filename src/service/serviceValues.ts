import table from "../../shared/service.json" with { type: "json" };
import { figuresOf } from "../fitting/dataValues";

/** Training values of a service visit; what each is for is told in `shared/service.json`. */
export const SERVICE = figuresOf(table.values);

/** Volts and ohms of one cell of each type, new and what the end has taken and added. */
export const CELL_MODEL = {
  alkaline: figuresOf(table.cells.alkaline),
  lithium: figuresOf(table.cells.lithium),
  rechargeable: figuresOf(table.cells.rechargeable),
} as const;
