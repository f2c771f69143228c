import { useMemo, useState } from "react";
import { gaugeCsv } from "../../progress/csv/gaugeCsv";
import { ofHand } from "../../progress/oneHand";
import { placesOf } from "../../progress/stops/dialingGauge";
import type { Hand } from "../../realdial/sources/handOf";
import { skillKey } from "../../records/skill";
import { Button } from "../parts/controls/Button";
import { type Choices, Select } from "../parts/controls/Select";
import { useCsvMark } from "../parts/files/CsvMarkChoice";
import { Lines } from "../parts/Lines";
import type { ClassView, NamedSkill } from "./classView";
import { categoriesSentence, type GaugeView, gaugeView } from "./gaugeWords";
import { ScrolledTable } from "./ScrolledTable";
import { saveCsv } from "./saveCsv";

/** All numbers of a combination, or one of them alone. */
const placeChoices = (places: number): Choices => [
  ["all", "all numbers"],
  ...Array.from({ length: places }, (_, k) => [`${k + 1}`, `number ${k + 1} alone`] as const),
];

function Study({ view: { sentence, lacks, sources, means } }: { readonly view: GaugeView }) {
  return (
    <>
      <p className="max-w-[92ch]">{sentence}</p>
      {lacks.length > 0 && <Lines of={lacks} className="text-small" />}
      <div className="tiles-[460px] gap-x-6 gap-y-4">
        {sources !== null && <ScrolledTable table={sources} />}
        {means !== null && <ScrolledTable table={means} />}
      </div>
    </>
  );
}

interface GaugePanelProps {
  readonly view: Pick<ClassView, "contents" | "names">;
  readonly skills: readonly NamedSkill[];
  /** That turned the dial. */
  readonly hand: Hand;
}

/** How far hands and people differ: a gauge study of dialing. */
export function GaugePanel({ view, skills, hand }: GaugePanelProps) {
  const [key, setKey] = useState("");
  const [asked, setPlace] = useState<number | null>(null);
  const [mark] = useCsvMark();
  const skill = skills.find((one) => one.key === key) ?? skills[0];
  const { contents, names } = view;
  const places = useMemo(
    () => placesOf(ofHand(contents.records.attempts, hand).filter((one) => skillKey(one) === skill?.key)),
    [contents, skill, hand],
  );
  const place = asked !== null && asked <= places ? asked : null;
  const study = useMemo(
    () => skill && gaugeView(contents, skill.skill, place, names, hand),
    [contents, names, skill, place, hand],
  );
  if (skill === undefined || study === undefined) return null;
  const { gauge } = study;
  return (
    <section className="card col-span-full" aria-labelledby="desk-gauge">
      <h2 id="desk-gauge">How much stops vary</h2>
      <p className="max-w-[92ch]">
        How much does one person’s stop vary from try to try, and how much do people differ from each other?
      </p>
      <div className="row">
        <Select
          aria-label="Skill studied"
          value={skill.key}
          choices={skills.map((one) => [one.key, one.title] as const)}
          onChoice={setKey}
        />
        <Select
          aria-label="Number studied"
          value={`${place ?? "all"}`}
          choices={placeChoices(places)}
          onChoice={(chosen) => setPlace(chosen === "all" ? null : Number(chosen))}
        />
        <Button
          disabled={gauge === null}
          onClick={() => gauge && saveCsv("gauge", gaugeCsv(skill.skill, place, gauge, hand), mark)}
        >
          Save the study as CSV
        </Button>
      </div>
      <Study view={study} />
      <details className="figure-note">
        <summary>How this is worked out</summary>
        <p>
          Each person is studied like a gauge, by analysis of variance (AIAG, 2010). The part is a number’s place in the
          combination, the appraiser a person, the equipment one person at the same number again, the measurement the
          stop error.{gauge === null ? "" : ` ${categoriesSentence(gauge)}`}
        </p>
      </details>
    </section>
  );
}
