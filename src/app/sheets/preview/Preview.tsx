import { useMemo } from "react";
import { markingScheme, schemeAdvice, schemeRows } from "../../../drill/marking/markingScheme";
import type { Sheet, Station } from "../../../drill/sheet/sheet";
import { sheetFingerprint } from "../../../drill/sheet/sheetFingerprint";
import { stationName } from "../../../drill/sheet/stationName";
import { countText } from "../../../wording/amountWords";
import { HeadRow } from "../../parts/HeadRow";
import { Lines } from "../../parts/Lines";
import {
  combinationText,
  hiddenTrouble,
  jobNote,
  knownProfile,
  ORDER_WORDS,
  sittingSentences,
  stationLine,
} from "../../results/sheetWords";
import { AnswerKey } from "./AnswerKey";
import { examplePlan, isDrawn, type Plan } from "./previewModel";
import { groupText, tryGroups } from "./tryGroups";

function Sentences({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section>
      <h3 className="mb-2 ruled-below">{title}</h3>
      <Lines of={[...new Set(lines)]} />
    </section>
  );
}

function Stations({ sheet }: { readonly sheet: Sheet }) {
  return (
    <section>
      <h3 className="mb-2 ruled-below">Stations</h3>
      <ol className="grid gap-3">
        {sheet.stations.map((station, index) => (
          <li key={station.id}>
            <b>{stationName(station, index)}</b>
            {station.task !== undefined && <p>{station.task}</p>}
            <p className="text-small text-soft">{stationLine(station, "trainee")}</p>
            {jobNote(station) !== null && <p className="text-small text-soft">{jobNote(station)}</p>}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** What a try does that is given no combination. */
const WORK: Readonly<Record<Station["kind"], string>> = {
  dialing: "dials",
  zeroing: "sets zero",
  change: "changes",
  trouble: "finds a hidden defect",
  handover: "hands over",
  fitting: "fits a dial",
  service: "makes a service visit",
  inspection: "judges a fit",
};

const workAt = (station: Station | undefined): string =>
  station?.kind === "handover" && station.fit === "first" ? "fits and hands over" : WORK[station?.kind ?? "zeroing"];

const MOST_GROUPS = 40;

function TryTable({ sheet, tries }: { readonly sheet: Sheet } & Extract<Plan, { tries: unknown }>) {
  const names = sheet.stations.map(stationName);
  const profiles = sheet.stations.map(knownProfile);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section className="max-h-[300px] overflow-auto" tabIndex={0} aria-label="All tries">
      <table>
        <HeadRow of={["Try", "Station", "Combination"]} />
        <tbody>
          {tries.map(({ station, repetition, combination }, k) => (
            <tr key={`${station}-${repetition}`}>
              <td>{k + 1}</td>
              <td>
                {names[station]}, {repetition}
              </td>
              <td>
                {combination === null
                  ? workAt(sheet.stations[station])
                  : combinationText(combination, profiles[station] ?? null)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function HiddenTrouble({ sheet }: { readonly sheet: Sheet }) {
  const lines = sheet.stations.flatMap((station, index) => {
    const trouble = hiddenTrouble(station);
    return trouble.length === 0 ? [] : [`${stationName(station, index)}: ${trouble.join(", ")}.`];
  });
  if (lines.length === 0) return <p className="text-small text-soft">No station hides a defect or a condition.</p>;
  return lines.map((line) => <p key={line}>{line}</p>);
}

function Tries({ sheet, tries }: { readonly sheet: Sheet } & Extract<Plan, { tries: unknown }>) {
  const groups = tryGroups(tries);
  const names = sheet.stations.map(stationName);
  const left = groups.slice(MOST_GROUPS);
  const leftTries = left.reduce((sum, { first, last }) => sum + last - first + 1, 0);
  // On paper an example of a random order would be taken for the order.
  const isExample = sheet.order === "random" && sheet.seed === undefined;
  return (
    <>
      {isDrawn(sheet) && (
        <p className="text-small text-soft">
          Each sitting draws anew.{isExample && <span className="print:hidden"> This is one example.</span>}
        </p>
      )}
      <ol className={isExample ? "plain row gap-y-2 my-3 print:hidden" : "plain row gap-y-2 my-3"}>
        {groups.slice(0, MOST_GROUPS).map((group) => (
          <li key={group.first} className="plate px-3 py-1 text-small">
            <span className="text-small text-soft">{groupText(group)}</span> {names[group.station]}
          </li>
        ))}
        {leftTries > 0 && (
          <li className="plate px-3 py-1 text-small">and {countText(leftTries, "more try", "more tries")}</li>
        )}
      </ol>
      <AnswerKey>
        <HiddenTrouble sheet={sheet} />
        <TryTable {...{ sheet, tries }} />
      </AnswerKey>
    </>
  );
}

function OrderOfTries({ sheet }: { readonly sheet: Sheet }) {
  const plan = useMemo(() => examplePlan(sheet), [sheet]);
  return (
    <section>
      <h3 className="mb-2 ruled-below">Order of tries</h3>
      <p>
        {ORDER_WORDS[sheet.order]}
        {sheet.seed === undefined ? "." : `, by seed ${sheet.seed}.`}
      </p>
      {"says" in plan ? <p className="problem">{plan.says}</p> : <Tries sheet={sheet} tries={plan.tries} />}
    </section>
  );
}

function Marking({ sheet }: { readonly sheet: Sheet }) {
  const scheme = markingScheme(sheet);
  const [heading = [], ...rows] = schemeRows(scheme);
  if (rows.length === 0) return <Sentences title="Marking scheme" lines={["Nothing is marked. This is practice."]} />;
  return (
    <section>
      <h3 className="mb-2 ruled-below">Marking scheme</h3>
      <div>
        <table>
          <HeadRow of={heading} />
          <tbody>
            {rows.map(([where, asked, how], k) => (
              <tr key={`${where} ${asked}`}>
                {/* The same as in the row above: there for whoever hears the table, quiet for the eye. */}
                <td>{rows[k - 1]?.[0] === where ? <span className="visually-hidden">{where}</span> : where}</td>
                <td>{asked}</td>
                <td>{how}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {schemeAdvice(scheme).map((line) => (
        <p key={line} className="text-small text-soft">
          {line}
        </p>
      ))}
    </section>
  );
}

/** A sound sheet as the trainee meets it before the start; the page that is printed. */
export function Preview({ sheet }: { readonly sheet: Sheet }) {
  const { sitting } = sheet;
  const questions = (sitting?.questions?.topics ?? []).reduce((sum, { count }) => sum + count, 0);
  const rules = sitting === undefined ? [] : sittingSentences(sitting);
  const asked = questions > 0 ? [`After the tries you answer ${countText(questions, "question")}.`] : [];
  return (
    <article className="preview mt-4 print:m-0" aria-label={`The sheet as the trainee sees it: ${sheet.title}`}>
      <h2 className="text-title">{sheet.title}</h2>
      <p>{sheet.purpose}</p>
      <p className="preview-name hidden print:block">Name</p>
      <p className="preview-name hidden print:block">Date</p>
      <Sentences title="Instructions" lines={sheet.instructions ?? []} />
      <Sentences title="Rules" lines={[...rules, ...asked]} />
      <Sentences title="Cautions" lines={sheet.cautions ?? []} />
      <Stations sheet={sheet} />
      <OrderOfTries sheet={sheet} />
      <Marking sheet={sheet} />
      <p className="text-small text-soft">A practice result is not a certificate.</p>
      {sheet.source !== undefined && <p className="text-small text-soft">Source: {sheet.source}</p>}
      <p className="text-small text-soft">
        Fingerprint of this sheet: <b>{sheetFingerprint(sheet)}</b>. Two sheets that ask the same have the same
        fingerprint; wording does not count.
      </p>
    </article>
  );
}
