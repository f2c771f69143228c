import { useMemo, useState } from "react";
import { gaugeCsv } from "../../progress/csv/gaugeCsv";
import { placesOf } from "../../progress/stops/dialingGauge";
import { skillKey } from "../../records/skill";
import { useCsvMark } from "../parts/files/CsvMarkChoice";
import { saveFile } from "../parts/files/saveFile";
import type { ClassView, NamedSkill } from "./classView";
import { deskFile } from "./deskFile";
import { categoriesSentence, type GaugeView, gaugeView } from "./gaugeWords";
import { ScrolledTable } from "./ScrolledTable";

interface ChoiceProps {
  readonly skills: readonly NamedSkill[];
  readonly skill: NamedSkill;
  readonly onSkill: (key: string) => void;
  readonly places: number;
  readonly place: number | null;
  readonly onPlace: (place: number | null) => void;
}

function Choice({ skills, skill, onSkill, places, place, onPlace }: ChoiceProps) {
  return (
    <>
      <select
        className="field"
        aria-label="Skill studied"
        value={skill.key}
        onChange={({ currentTarget: { value } }) => onSkill(value)}
      >
        {skills.map(({ key, title }) => (
          <option key={key} value={key}>
            {title}
          </option>
        ))}
      </select>
      <select
        className="field"
        aria-label="Number studied"
        value={place ?? "all"}
        onChange={({ currentTarget: { value } }) => onPlace(value === "all" ? null : Number(value))}
      >
        <option value="all">all numbers</option>
        {Array.from({ length: places }, (_, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a number of a combination is its place
          <option key={k} value={k + 1}>
            number {k + 1} alone
          </option>
        ))}
      </select>
    </>
  );
}

function Study({ view: { sentence, lacks, sources, means } }: { readonly view: GaugeView }) {
  return (
    <>
      <p className="max-w-[92ch]">{sentence}</p>
      {lacks.length > 0 && (
        <ul className="text-small">
          {lacks.map((lack) => (
            <li key={lack}>{lack}</li>
          ))}
        </ul>
      )}
      <div className="tiles-[460px] gap-x-6 gap-y-4">
        {sources !== null && <ScrolledTable table={sources} />}
        {means !== null && <ScrolledTable table={means} />}
      </div>
    </>
  );
}

/** How far hands and people differ: a gauge study of dialing. */
export function GaugePanel({ view, skills }: { readonly view: ClassView; readonly skills: readonly NamedSkill[] }) {
  const [key, setKey] = useState("");
  const [asked, setPlace] = useState<number | null>(null);
  const [mark] = useCsvMark();
  const skill = skills.find((one) => one.key === key) ?? skills[0];
  const { contents, names } = view;
  const places = useMemo(
    () => placesOf(contents.records.attempts.filter((one) => skillKey(one) === skill?.key)),
    [contents, skill],
  );
  const place = asked !== null && asked <= places ? asked : null;
  const study = useMemo(() => skill && gaugeView(contents, skill.skill, place, names), [contents, names, skill, place]);
  if (skill === undefined || study === undefined) return null;
  const { gauge } = study;
  return (
    <section className="card col-span-full" aria-labelledby="desk-gauge">
      <h2 id="desk-gauge">How much stops vary</h2>
      <p className="max-w-[92ch]">
        How much does one person’s stop vary from try to try, and how much do people differ from each other?
      </p>
      <div className="row">
        <Choice skills={skills} skill={skill} onSkill={setKey} places={places} place={place} onPlace={setPlace} />
        <button
          type="button"
          className="button"
          disabled={gauge === null}
          onClick={() =>
            gauge && saveFile(deskFile("gauge", gaugeCsv(skill.skill, place, gauge), { now: Date.now(), csv: mark }))
          }
        >
          Save the study as CSV
        </button>
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
