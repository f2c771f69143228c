import type { Graduations, Milliseconds } from "../../lock/dial";

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
  const button = (by: number, label: string, name: string) => (
    <button key={name} type="button" className="button" aria-label={name} onClick={() => onTurn(by, performance.now())}>
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
