import type { MouseEvent } from "react";
import type { Graduations } from "../../../lock/dial";
import { Button } from "../../parts/controls/Button";
import { focusDial } from "../dial/focusDial";
import type { DialSource, SourceControlsProps } from "./dialSource";

function TurnButtons({ perTurn, turn }: SourceControlsProps) {
  const sizes = [
    { by: perTurn, label: "1 turn" },
    { by: 10, label: "10" },
    { by: 1, label: "1" },
    { by: 0.1, label: "0.1" },
  ];
  const press = (event: MouseEvent, by: Graduations) => {
    turn(by, performance.now());
    // A pointer leaves the keys to the dial; whoever came here by keyboard stays.
    if (event.detail > 0) focusDial();
  };
  const button = (by: number, label: string, name: string) => (
    <Button key={name} aria-label={name} onClick={(event) => press(event, by)}>
      {label}
    </Button>
  );
  return (
    <fieldset className="turn-buttons flex flex-wrap justify-center gap-2 plain">
      <legend className="visually-hidden">Turn the dial by steps</legend>
      {sizes.map(({ by, label }) => button(by, `↺ ${label}`, `Left by ${label}`))}
      <span className="w-[14px] phone:hidden" />
      {sizes.toReversed().map(({ by, label }) => button(-by, `${label} ↻`, `Right by ${label}`))}
    </fieldset>
  );
}

/** Every motion of the dial without dragging: a turn, ten, one and a tenth, each way. */
export const BUTTONS: DialSource = { name: "buttons", help: [], Controls: TurnButtons };
