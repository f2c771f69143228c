import type { MouseEvent, ReactNode } from "react";
import type { Graduations } from "../../../lock/dial";
import { Button } from "../../parts/controls/Button";
import { TurnGlyph } from "../../parts/TurnGlyph";
import { focusDial } from "../dial/focusDial";
import type { DialSource, SourceControlsProps } from "./dialSource";

/** How far a button turns, graduations, and what stands on it. */
interface Step {
  readonly by: Graduations;
  readonly label: string;
}

function TurnButtons({ perTurn, turn }: SourceControlsProps) {
  const steps: readonly Step[] = [
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
  const button = (by: number, name: string, children: ReactNode) => (
    <Button key={name} aria-label={name} onClick={(event) => press(event, by)}>
      {children}
    </Button>
  );
  const leftBy = ({ by, label }: Step) =>
    button(
      by,
      `Left by ${label}`,
      <>
        <TurnGlyph turn="left" /> {label}
      </>,
    );
  const rightBy = ({ by, label }: Step) =>
    button(
      -by,
      `Right by ${label}`,
      <>
        {label} <TurnGlyph turn="right" />
      </>,
    );
  return (
    <fieldset className="turn-buttons flex flex-wrap justify-center gap-2 plain">
      <legend className="visually-hidden">Turn the dial by steps</legend>
      {steps.map(leftBy)}
      <span className="w-[14px] phone:hidden" />
      {steps.toReversed().map(rightBy)}
    </fieldset>
  );
}

/** Every motion of the dial without dragging: a turn, ten, one and a tenth, each way. */
export const BUTTONS: DialSource = { name: "buttons", help: [], Controls: TurnButtons };
