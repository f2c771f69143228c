import type { PersonRecord, SittingRecord } from "../../records/records";
import { countText } from "../../wording/amountWords";
import { shortDayText } from "../parts/moments";
import type { TableModel } from "../pictures/charts/figureModel";
import type { DeskSitting } from "./sittingChecks";

/** A sitting with what its checked record says. */
interface Checked {
  readonly sitting: SittingRecord;
  readonly told: DeskSitting;
}

const timeOf = ({ sitting, told }: Checked) =>
  told.startedAt === null ? sitting.startedAt : Date.parse(told.startedAt);

/** One cell: the latest result, its day, what checking the record came to, and how many sittings there are. */
function cellText(sittings: readonly Checked[]): string {
  const latest = sittings.toSorted((a, b) => timeOf(b) - timeOf(a))[0];
  if (latest === undefined) return "–";
  const { result, record } = latest.told;
  const more = sittings.length === 1 ? "" : `; latest of ${sittings.length}`;
  return `${result}, ${shortDayText(timeOf(latest))}; record ${record}${more}`;
}

/** The sheet by the whole of its fingerprint; what has none stands under what is said of it. */
const keyOf = ({ sheetSha256, title }: DeskSitting) => sheetSha256 ?? title;

/** What the sittings of a class came to, in a sentence. */
export function sittingsSentence(told: readonly DeskSitting[]): string {
  const count = (wanted: DeskSitting["outcome"]) => told.filter(({ outcome }) => outcome === wanted).length;
  const [passed, failed, open] = [count("passed"), count("failed"), count("not shown yet") + count("broken-off")];
  const none = told.length - passed - failed - open;
  const parts = [`${passed} passed`, `${failed} not passed`, `${open} not decided`];
  return `${countText(told.length, "sitting")}: ${parts.join(", ")}${none === 0 ? "" : `, ${none} without a result`}.`;
}

/**
 * Sittings of a class in one grid: people by sheets. Sheets are told apart by their fingerprint, so one with eased marks
 * has a column of its own.
 *
 * @param people - those who sit, each once
 * @param checks - what checking each record came to, by the sitting's id
 */
export function sittingsGrid(
  people: readonly PersonRecord[],
  names: ReadonlyMap<string, string>,
  sittings: readonly SittingRecord[],
  checks: ReadonlyMap<string, DeskSitting>,
): TableModel {
  const checked = sittings.flatMap((sitting): Checked[] => {
    const told = checks.get(sitting.id);
    return told === undefined ? [] : [{ sitting, told }];
  });
  const nameOf = ({ id, name }: PersonRecord) => names.get(id) ?? name;
  const headOf = ({ title, fingerprint }: DeskSitting) => (fingerprint === null ? title : `${title} (${fingerprint})`);
  const sheets = new Map(checked.map(({ told }) => [keyOf(told), headOf(told)]));
  const columns = [...sheets].sort(([a, one], [b, other]) => one.localeCompare(other) || a.localeCompare(b));
  return {
    caption: "Sittings of the class: latest result at each sheet",
    head: ["person", ...columns.map(([, head]) => head)],
    rows: people
      .toSorted((a, b) => nameOf(a).localeCompare(nameOf(b)))
      .map((person) => [
        nameOf(person),
        ...columns.map(([key]) =>
          cellText(checked.filter(({ sitting, told }) => sitting.personId === person.id && keyOf(told) === key)),
        ),
      ]),
  };
}
