import { useRef } from "react";
import type { Condition } from "../../../drill/sheet/sheet";
import { Button } from "../../parts/controls/Button";
import { ChoiceField, NumberField } from "./fields";
import type { StationEdit } from "./stationEdit";

type Kind = Condition["kind"];

const KINDS: readonly (readonly [Kind, string])[] = [
  ["index-offset", "Index offset"],
  ["lost-motion", "Lost motion"],
  ["noise", "Noise in readings"],
  ["heavy-dial", "Heavy dial"],
  ["light-dial", "Light dial"],
  ["no-cutaway", "No cutaway"],
];

const SIZES: Readonly<Partial<Record<Kind, number>>> = { "index-offset": 0.3, "lost-motion": 0.5, noise: 0.05 };

const conditionOf = (kind: Kind, from: number | undefined): Condition => {
  const since = from === undefined ? {} : { from };
  const size = SIZES[kind];
  return (size === undefined ? { kind, ...since } : { kind, size, ...since }) as Condition;
};

interface OneProps {
  readonly condition: Condition;
  readonly path: string;
  readonly onCondition: (condition: Condition, field: string) => void;
  readonly onRemove: () => void;
}

function OneCondition({ condition, path, onCondition, onRemove }: OneProps) {
  return (
    <li className="flex flex-wrap items-end gap-y-3 gap-x-4 mb-3">
      <ChoiceField
        label="Condition"
        path={`${path}.kind`}
        value={condition.kind}
        choices={KINDS}
        onChoice={(kind) => onCondition(conditionOf(kind, condition.from), "kind")}
      />
      {"size" in condition && (
        <NumberField
          label="Size, graduations"
          path={`${path}.size`}
          value={condition.size}
          onNumber={(size) => onCondition({ ...condition, size: size ?? Number.NaN }, "size")}
        />
      )}
      <NumberField
        label="From try"
        path={`${path}.from`}
        value={condition.from}
        onNumber={(from) => onCondition({ ...condition, from }, "first try")}
      />
      <Button onClick={onRemove}>
        Remove<span className="visually-hidden"> this condition</span>
      </Button>
    </li>
  );
}

const MOST = 10;

/** Trouble that a station injects. */
export function ConditionFields({ station, path, onFields }: StationEdit) {
  const { conditions = [] } = station;
  const adder = useRef<HTMLButtonElement>(null);
  const take = (next: readonly Condition[], field: string) =>
    onFields({ conditions: next.length === 0 ? undefined : next }, field);
  return (
    <fieldset className="sheets-part tiles-[210px] phone:tiles-[140px] col-span-full items-start phone:items-end gap-x-5 gap-y-4 mt-4 pt-3 ruled">
      <legend>Conditions</legend>
      <ul className="plain col-span-full">
        {conditions.map((condition, k) => (
          <OneCondition
            // biome-ignore lint/suspicious/noArrayIndexKey: a condition has no name, and its fields hold no state but their text
            key={k}
            condition={condition}
            path={`${path}.conditions[${k}]`}
            onCondition={(next, field) => take(conditions.with(k, next), `condition ${k} ${field}`)}
            onRemove={() => {
              adder.current?.focus();
              take(conditions.toSpliced(k, 1), "remove condition");
            }}
          />
        ))}
      </ul>
      <Button
        ref={adder}
        disabled={conditions.length >= MOST}
        onClick={() => take([...conditions, conditionOf("index-offset", undefined)], `condition ${conditions.length}`)}
      >
        Add a condition
      </Button>
    </fieldset>
  );
}
