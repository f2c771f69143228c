import { useState } from "react";
import type { HandoverStation, Station } from "../../../drill/sheet/sheet";
import type { Profile } from "../../../lock/profile";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { FileButton } from "../../parts/files/FileButton";
import { profileFromFile } from "../../parts/files/profileFile";
import { ConditionFields } from "./ConditionFields";
import { DefectFields } from "./DefectFields";
import { ChoiceField, NumberField, TextField, TimeField } from "./fields";
import { helpChoices } from "./helpChoices";
import { MarksFields } from "./MarksFields";
import { PolicyFields } from "./PolicyFields";
import { SourceFields } from "./SourceFields";
import type { StationEdit } from "./stationEdit";

const OWN = "own profile";

const fits = (lock: Profile, kind: Station["kind"]): boolean => {
  if (kind === "zeroing") return lock.kind === "dial-encoder";
  return kind !== "change" || lock.kind === "dial-encoder" || lock.changing !== undefined;
};

/** Locks to choose from: shipped ones that fit the exercise, and whatever the station has now. */
function lockChoices({ kind, profile }: Station): (readonly [string, string])[] {
  const shipped = SHIPPED_PROFILES.filter((one) => fits(one, kind)).map(({ id, title }) => [id, title] as const);
  if (typeof profile !== "string") return [...shipped, [OWN, `${profile.title} (from a file)`]];
  return shipped.some(([id]) => id === profile) ? shipped : [...shipped, [profile, profile]];
}

/** What a loaded lock must be for this station; a sentence where it is not. */
const misfit = ({ kind }: Station, profile: Profile, name: string) =>
  kind === "zeroing" && profile.kind !== "dial-encoder"
    ? `${name} was not loaded: this station sets a zero, so it needs a dial-encoder lock. Choose another file.`
    : null;

/** The lock: a shipped one, or one from a file, which the sheet then carries whole. */
function LockField({ station, path, onFields }: StationEdit) {
  const [problem, setProblem] = useState<string | null>(null);
  const load = async (file: File) => {
    const loaded = await profileFromFile(file);
    const says = typeof loaded === "string" ? loaded : misfit(station, loaded, file.name);
    setProblem(says);
    if (says === null && typeof loaded !== "string") onFields({ profile: loaded }, "own profile");
  };
  return (
    <div className="grid justify-items-start gap-3">
      <ChoiceField
        label="Lock"
        path={`${path}.profile`}
        value={typeof station.profile === "string" ? station.profile : OWN}
        choices={lockChoices(station)}
        onChoice={(id) => {
          setProblem(null);
          if (id !== OWN) onFields({ profile: id }, "profile");
        }}
      />
      <FileButton accept=".json" title="The sheet then contains the whole lock profile" onFile={load}>
        Load a lock profile
      </FileButton>
      {problem !== null && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

type WithNumber<Name extends string> = Station & { readonly [Key in Name]?: number | undefined };

/** A number of a station by its name; one that is not there is not asked. */
function numberAt<Name extends string, Kind extends WithNumber<Name>>(
  { station, path, onFields }: StationEdit<Kind>,
  name: Name,
) {
  return {
    path: `${path}.${name}`,
    value: station[name],
    onNumber: (number: number | undefined) => onFields({ [name]: number } as Partial<Kind>, name),
  };
}

/** A text of a station by its name; an empty one is none. */
const textAt = ({ station, path, onFields }: StationEdit, name: "title" | "task") => ({
  path: `${path}.${name}`,
  value: station[name] ?? "",
  onText: (text: string) => onFields({ [name]: text === "" ? undefined : text }, name),
});

const HANDS = [
  ["real", "The trainee dials"],
  ["simulated", "A simulated hand dials"],
] as const;

const BEGINNINGS = [
  ["on-door", "With the lock on its door"],
  ["first", "With the parts in the tray: the lock is fitted first"],
] as const;

/** Who dials, and whether the lock is fitted first. */
function HandoverFields({ station, path, onFields }: StationEdit<HandoverStation>) {
  return (
    <>
      <ChoiceField
        label="Who dials"
        path={`${path}.hand`}
        value={station.hand}
        choices={HANDS}
        onChoice={(hand) => onFields({ hand }, "hand")}
      />
      <ChoiceField
        label="How it begins"
        path={`${path}.fit`}
        value={station.fit ?? "on-door"}
        choices={BEGINNINGS}
        onChoice={(fit) => onFields({ fit: fit === "first" ? fit : undefined }, "fit")}
      />
    </>
  );
}

/** What the kind of the station brings. */
function KindFields({ station, path, onFields }: StationEdit) {
  switch (station.kind) {
    case "dialing":
      return (
        <>
          <PolicyFields {...{ station, path, onFields }} />
          <NumberField label="Numbers to dial (empty: all)" {...numberAt({ station, path, onFields }, "upTo")} />
        </>
      );
    case "zeroing":
      return (
        <>
          <NumberField label="Zero tolerance, graduations" {...numberAt({ station, path, onFields }, "tolerance")} />
          <NumberField label="Stops that close a side" {...numberAt({ station, path, onFields }, "readings")} />
        </>
      );
    case "change":
      return <PolicyFields {...{ station, path, onFields }} />;
    case "trouble":
      return <DefectFields {...{ station, path, onFields }} />;
    case "fitting":
    case "service":
    case "inspection":
      return null;
    case "handover":
      return <HandoverFields {...{ station, path, onFields }} />;
  }
}

/** Everything that one station asks. */
export function StationForm({ station, path, onFields }: StationEdit) {
  return (
    <div className="tiles-[210px] items-start gap-x-5 gap-y-4 pt-3">
      <TextField label="Title" {...textAt({ station, path, onFields }, "title")} />
      <TextField
        label="Short name, unique in this sheet"
        path={`${path}.id`}
        value={station.id}
        onText={(id) => onFields({ id }, "id")}
      />
      <TextField label="What to do" isLong {...textAt({ station, path, onFields }, "task")} />
      <LockField {...{ station, path, onFields }} />
      <ChoiceField
        label="Help"
        path={`${path}.help`}
        value={station.help}
        choices={helpChoices(station.kind)}
        onChoice={(help) => onFields({ help }, "help")}
      />
      <NumberField
        label="Tries"
        path={`${path}.repetitions`}
        value={station.repetitions}
        onNumber={(repetitions) => onFields({ repetitions: repetitions ?? Number.NaN }, "repetitions")}
      />
      <TimeField
        label="Time limit of a try, m:ss or seconds (empty: none)"
        {...numberAt({ station, path, onFields }, "timeLimit_s")}
      />
      <KindFields {...{ station, path, onFields }} />
      <MarksFields {...{ station, path, onFields }} />
      {(station.kind === "dialing" || station.kind === "zeroing") && (
        <>
          <SourceFields {...{ station, path, onFields }} />
          <ConditionFields {...{ station, path, onFields }} />
        </>
      )}
    </div>
  );
}
