import type { MouseEvent } from "react";
import type { Graduations, Milliseconds } from "../../lock/dial";
import { focusDial } from "./dial/focusDial";

interface TurnButtonsProps {
  readonly perTurn: number;
  readonly onTurn: (by: Graduations, at: Milliseconds) => void;
}

/** Every motion of the dial without dragging: a turn, ten, one and a tenth, each way. */
export function TurnButtons({ perTurn, onTurn }: TurnButtonsProps) {
  const sizes = [
    { by: perTurn, label: "1 turn", said: "one turn" },
    { by: 10, label: "10", said: "ten" },
    { by: 1, label: "1", said: "one" },
    { by: 0.1, label: "0.1", said: "a tenth" },
  ];
  const press = (event: MouseEvent, by: Graduations) => {
    onTurn(by, performance.now());
    // A pointer leaves the keys to the dial; whoever came here by keyboard stays.
    if (event.detail > 0) focusDial();
  };
  const button = (by: number, label: string, name: string) => (
    <button key={name} type="button" className="button" aria-label={name} onClick={(event) => press(event, by)}>
      {label}
    </button>
  );
  return (
    <fieldset className="turn-buttons">
      <legend className="visually-hidden">Turn the dial by steps</legend>
      {sizes.map(({ by, label, said }) => button(by, `↺ ${label}`, `Left by ${said}`))}
      <span className="turn-buttons-gap" />
      {sizes.toReversed().map(({ by, label, said }) => button(-by, `${label} ↻`, `Right by ${said}`))}
    </fieldset>
  );
}
