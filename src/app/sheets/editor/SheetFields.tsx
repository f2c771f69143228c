import type { Order } from "../../../drill/sheet/sheet";
import { ORDER_WORDS } from "../../results/sheetWords";
import type { EditSession } from "./editSession";
import { ChoiceField, LinesField, NumberField, TextField } from "./fields";

const ORDERS = Object.entries(ORDER_WORDS) as [Order, string][];

type Lines = readonly string[] | undefined;
const writeLines = (lines: Lines) => (lines ?? []).join("\n");
const readLines = (text: string): Lines => {
  const lines = text.split("\n").filter((line) => line.trim() !== "");
  return lines.length === 0 ? undefined : lines;
};

/** What the sheet says of itself. */
export function HeadFields({ session }: { readonly session: EditSession }) {
  const { sheet } = session;
  return (
    <div className="tiles-[210px] items-start gap-x-5 gap-y-4 pt-3 sheets-head">
      <TextField
        label="Title"
        path="title"
        value={sheet.title}
        onText={(title) => session.describe({ title }, "title")}
      />
      <TextField
        label="Purpose"
        path="purpose"
        value={sheet.purpose}
        isLong
        onText={(purpose) => session.describe({ purpose }, "purpose")}
      />
      <LinesField
        label="Instructions, one a line"
        path="instructions"
        value={sheet.instructions}
        write={writeLines}
        read={readLines}
        onValue={(instructions) => session.describe({ instructions }, "instructions")}
      />
      <LinesField
        label="Cautions, one a line"
        path="cautions"
        value={sheet.cautions}
        write={writeLines}
        read={readLines}
        onValue={(cautions) => session.describe({ cautions }, "cautions")}
      />
      <TextField
        label="Source of the sheet (empty: none)"
        path="source"
        value={sheet.source ?? ""}
        onText={(source) => session.describe({ source: source === "" ? undefined : source }, "source")}
      />
    </div>
  );
}

/** In which order the tries come. */
export function OrderFields({ session }: { readonly session: EditSession }) {
  const { sheet } = session;
  return (
    <div className="tiles-[210px] items-start gap-x-5 gap-y-4 pt-3">
      <ChoiceField
        label="Order of tries"
        path="order"
        value={sheet.order}
        choices={ORDERS}
        onChoice={(order) => session.describe({ order }, "order")}
      />
      <NumberField
        label="Seed, the same draw for everyone (empty: each sitting draws anew)"
        path="seed"
        value={sheet.seed}
        onNumber={(seed) => session.describe({ seed }, "seed")}
      />
    </div>
  );
}
