import type {
  ChangeMarks,
  DialingMarks,
  DialingStation,
  FittingMarks,
  HandoverMarks,
  InspectionMarks,
  ServiceMarks,
  Station,
  TroubleMarks,
  ZeroingMarks,
} from "../../../drill/sheet/sheet";
import { claimAdvice } from "../../../statistics/claim";
import { CheckField, NumberField, TimeField } from "./fields";
import type { StationEdit } from "./stationEdit";

type PlainMark =
  | Exclude<keyof DialingMarks, "claim">
  | keyof ZeroingMarks
  | keyof ChangeMarks
  | keyof TroubleMarks
  | keyof HandoverMarks
  | keyof FittingMarks
  | keyof ServiceMarks
  | keyof InspectionMarks;

type Marks = readonly (readonly [PlainMark, string])[];

const FAULTY = ["faultyTries", "Tries with a fault, at most"] as const;
const MEAN_TIME = ["meanTime_s", "Mean time of a try, at most, m:ss or seconds"] as const;

const MARKS: Readonly<Record<Station["kind"], Marks>> = {
  dialing: [
    ["firstTime", "Tries right the first time, at least"],
    FAULTY,
    ["stopErrorBias", "Mean stop error within, graduations"],
    ["stopErrorSpread", "Spread of the stop error, at most, graduations"],
    MEAN_TIME,
  ],
  zeroing: [["zeroed", "Zeros within tolerance, at least"], ["refused", "Refused stops, at most"], MEAN_TIME],
  change: [["right", "Changes set right and proved, at least"], FAULTY, MEAN_TIME],
  trouble: [
    ["right", "Defects named right, at least"],
    ["sizeError", "Mean error of the sizes named, at most, graduations"],
    MEAN_TIME,
  ],
  handover: [
    ["clean", "Handovers with nothing missing and no fault, at least"],
    ["faultyTries", "Handovers with a fault, at most"],
    ["meanTime_s", "Mean time of a handover, at most, m:ss or seconds"],
  ],
  service: [["right", "Visits without a fault, at least"], ["faults", "Faults over all visits, at most"], MEAN_TIME],
  fitting: [["right", "Fits with nothing wrong, at least"], ["faults", "Faults over all fits, at most"], MEAN_TIME],
  inspection: [
    ["right", "Fits judged right, at least"],
    ["mistakes", "Faults overlooked, wrongly named or guessed over all tries, at most"],
    MEAN_TIME,
  ],
};

const COMMON_CLAIM = { rate: 0.9, confidence: 0.9 };

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
        label="The tries must show a rate of opening"
        value={claim !== undefined}
        onCheck={(isAsked) => take(isAsked ? COMMON_CLAIM : undefined, "claim")}
      />
      {claim !== undefined && (
        <>
          <NumberField
            label="Rate of opening to show, %"
            path={`${path}.claim.rate`}
            value={claim.rate}
            isPercent
            onNumber={(rate) => take({ ...claim, rate: rate ?? Number.NaN }, "rate")}
          />
          <NumberField
            label="Confidence, %"
            path={`${path}.claim.confidence`}
            value={claim.confidence}
            isPercent
            onNumber={(confidence) => take({ ...claim, confidence: confidence ?? Number.NaN }, "confidence")}
          />
          {isSound && (
            <p className="col-span-full my-3 text-small text-soft print:hidden">{claimAdvice(claim).join(" ")}</p>
          )}
        </>
      )}
    </>
  );
}

/** What a station must reach; an empty field asks nothing. */
export function MarksFields({ station, path, onFields }: StationEdit) {
  const at = `${path}.passMarks`;
  const limits: { readonly [Mark in PlainMark]?: number | undefined } = station.passMarks;
  // A station has the marks of its own kind only: `MARKS` says which.
  const take = (mark: PlainMark, limit: number | undefined) =>
    onFields({ passMarks: { ...station.passMarks, [mark]: limit } } as Partial<Station>, mark);
  return (
    <fieldset className="sheets-part tiles-[210px] phone:tiles-[140px] col-span-full items-start phone:items-end gap-x-5 gap-y-4 mt-4 pt-3 ruled">
      <legend>Pass marks (empty: not asked)</legend>
      {MARKS[station.kind].map(([mark, label]) => {
        const Field = mark === "meanTime_s" ? TimeField : NumberField;
        return (
          <Field
            key={mark}
            label={label}
            path={`${at}.${mark}`}
            value={limits[mark]}
            onNumber={(limit) => take(mark, limit)}
          />
        );
      })}
      {station.kind === "dialing" && <ClaimFields station={station} path={at} onFields={onFields} />}
    </fieldset>
  );
}
