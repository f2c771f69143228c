import { SHIPPED_QUESTIONS } from "../../../drill/questions/shippedQuestions";
import { parseSheet } from "../../../drill/sheet/parseSheet";
import { stationName } from "../../../drill/sheet/stationName";
import { assignmentWithSheet, difficultyAnswer } from "../../../school/wire/assignmentsWire";
import { countText } from "../../../wording/amountWords";
import { useAsked } from "../../keeping/useLogbook";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import { StackedTable } from "../../parts/TextTable";
import type { Asking } from "../asking/asking";
import { difficultyText, type ItemFigures, sortingText } from "./resultWords";

interface PageProps {
  readonly asking: Asking;
  readonly assignmentId: string;
}

interface ItemsProps {
  readonly title: string;
  readonly items: readonly ItemFigures[];
  readonly nameOf: (item: string) => string;
}

function Items({ title, items, nameOf }: ItemsProps) {
  if (items.length === 0) return null;
  const hardestFirst = items.toSorted((one, other) => one.share - other.share);
  return (
    <StackedTable
      caption={title}
      head={["Asked", "How it went", "With the rest"]}
      rows={hardestFirst.map((one) => [nameOf(one.item), difficultyText(one), sortingText(one)])}
    />
  );
}

const questionText = (item: string): string =>
  SHIPPED_QUESTIONS.find(({ id }) => id === item)?.asks ?? `A question of another version (${shownName(item)})`;

/** How hard each question and station of a sheet proved. */
export function DifficultyPage({ asking, assignmentId }: PageProps) {
  const path = `/assignments/${assignmentId}`;
  const { answer, problem } = useAsked(assignmentId, async () => {
    const [{ sheet }, found] = await Promise.all([
      asking.read(path, assignmentWithSheet),
      asking.read(`${path}/difficulty`, difficultyAnswer),
    ]);
    return { sheet: parseSheet(sheet), found };
  });
  if (problem !== null) return <Notice className="">{problem}</Notice>;
  if (answer === null) return null;
  const { sheet, found } = answer;
  const stationText = (item: string) => {
    const index = sheet.stations.findIndex(({ id }) => id === item);
    const station = sheet.stations[index];
    return shownName(station === undefined ? item : stationName(station, index));
  };
  return (
    <>
      <p>
        <b className="font-medium">{shownName(sheet.title)}</b>: of {countText(found.people, "person", "people")}, the
        first sitting counts that came in and agrees. The hardest is first.
      </p>
      {found.people === 0 && <p>Nobody’s sitting has come in yet.</p>}
      <Items title="Stations" items={found.stations} nameOf={stationText} />
      <Items title="Questions" items={found.questions} nameOf={questionText} />
      {found.people > 0 && (
        <p className="text-small text-soft">
          Each range holds the true share in 95 of 100 classes like this one. “With the rest” compares each person’s
          result at a station with their mean at the other stations, and at a question with their mean at the other
          questions (corrected item correlation).
        </p>
      )}
    </>
  );
}
