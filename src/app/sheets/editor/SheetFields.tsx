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

interface HeadLinesProps {
  readonly session: EditSession;
  readonly field: "instructions" | "cautions";
  readonly label: string;
}

/** Sentences that are read before a sitting, one a line. */
function HeadLines({ session, field, label }: HeadLinesProps) {
  return (
    <LinesField
      label={`${label}, one a line`}
      path={field}
      value={session.sheet[field]}
      write={writeLines}
      read={readLines}
      onValue={(lines) => session.describe({ [field]: lines }, field)}
    />
  );
}

/** What the sheet says of itself. */
export function HeadFields({ session }: { readonly session: EditSession }) {
  const { title, purpose, source = "" } = session.sheet;
  const described = (field: "title" | "purpose" | "source", value: string) => ({
    path: field,
    value,
    onText: (text: string) =>
      session.describe({ [field]: text === "" && field === "source" ? undefined : text }, field),
  });
  return (
    <div className="tiles-[210px] items-start gap-x-5 gap-y-4 pt-3 sheets-head">
      <TextField label="Title" {...described("title", title)} />
      <TextField label="Purpose" isLong {...described("purpose", purpose)} />
      <HeadLines session={session} field="instructions" label="Instructions" />
      <HeadLines session={session} field="cautions" label="Cautions" />
      <TextField label="Source of the sheet (empty: none)" {...described("source", source)} />
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
