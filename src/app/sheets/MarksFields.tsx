import { claimAdvice } from "../../drill/marking/claim";
import type { DialingMarks, DialingStation, ZeroingMarks, ZeroingStation } from "../../drill/sheet/sheet";
import { CheckField, NumberField } from "./fields";
import type { StationEdit } from "./stationEdit";

type PlainMark = Exclude<keyof DialingMarks, "claim">;

const DIALING: readonly (readonly [PlainMark, string])[] = [
  ["firstTime", "Right the first time, at least"],
  ["faultyTries", "Tries with a fault, at most"],
  ["stopErrorBias", "Mean stop error within, graduations"],
  ["stopErrorSpread", "Spread of the stop error, at most, graduations"],
  ["meanTime_s", "Mean time of a try, at most, s"],
];

const ZEROING: readonly (readonly [keyof ZeroingMarks, string])[] = [
  ["zeroed", "Good zeros, at least"],
  ["refused", "Refused readings, at most"],
  ["meanTime_s", "Mean time of a try, at most, s"],
];

const COMMON_CLAIM = { rate: 0.9, confidence: 0.9 };
const PERCENT = 0.01;

function ClaimFields({ station, path, onFields }: StationEdit<DialingStation>) {
  const { passMarks } = station;
  const { claim } = passMarks;
  const take = (next: DialingMarks["claim"], field: string) =>
    onFields({ passMarks: { ...passMarks, claim: next } }, field);
  const isSound =
    claim !== undefined && [claim.rate, claim.confidence].every((share) => share >= 0.5 && share <= 0.999);
  return (
    <>
      <CheckField
        label="The tries must show a chance of opening"
        value={claim !== undefined}
        onCheck={(isAsked) => take(isAsked ? COMMON_CLAIM : undefined, "claim")}
      />
      {claim !== undefined && (
        <>
          <NumberField
            label="Chance to be shown, %"
            path={`${path}.claim.rate`}
            value={claim.rate}
            scale={PERCENT}
            onNumber={(rate) => take({ ...claim, rate: rate ?? Number.NaN }, "rate")}
          />
          <NumberField
            label="Confidence, %"
            path={`${path}.claim.confidence`}
            value={claim.confidence}
            scale={PERCENT}
            onNumber={(confidence) => take({ ...claim, confidence: confidence ?? Number.NaN }, "confidence")}
          />
          {isSound && <p className="sheets-note">{claimAdvice(claim).join(" ")}</p>}
        </>
      )}
    </>
  );
}

function DialingMarkFields(edit: StationEdit<DialingStation>) {
  const { station, path, onFields } = edit;
  return (
    <>
      {DIALING.map(([mark, label]) => (
        <NumberField
          key={mark}
          label={label}
          path={`${path}.${mark}`}
          value={station.passMarks[mark]}
          onNumber={(limit) => onFields({ passMarks: { ...station.passMarks, [mark]: limit } }, mark)}
        />
      ))}
      <ClaimFields {...edit} />
    </>
  );
}

function ZeroingMarkFields({ station, path, onFields }: StationEdit<ZeroingStation>) {
  return ZEROING.map(([mark, label]) => (
    <NumberField
      key={mark}
      label={label}
      path={`${path}.${mark}`}
      value={station.passMarks[mark]}
      onNumber={(limit) => onFields({ passMarks: { ...station.passMarks, [mark]: limit } }, mark)}
    />
  ));
}

/** What a station must reach; an empty mark is not asked. */
export function MarksFields(edit: StationEdit) {
  const { station, path, onFields } = edit;
  const at = `${path}.passMarks`;
  return (
    <fieldset className="sheets-part">
      <legend>Pass marks (empty: not asked)</legend>
      {station.kind === "dialing" ? (
        <DialingMarkFields station={station} path={at} onFields={onFields} />
      ) : (
        <ZeroingMarkFields station={station} path={at} onFields={onFields} />
      )}
    </fieldset>
  );
}
