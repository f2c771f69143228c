import { useState } from "react";
import type { JoiningRow } from "../../store/marks/outboxMarks";
import { countText } from "../../wording/amountWords";
import { Button } from "../parts/controls/Button";
import { shownName } from "../parts/shownName";
import { ChangesTold } from "./ChangesTold";
import { RefusedList } from "./RefusedList";
import type { SchoolBench } from "./schoolBench";
import { clockSentence, sendingWords, troubleSentence } from "./sendingWords";
import { useTold } from "./useTold";

interface PanelProps {
  readonly bench: SchoolBench;
  readonly onClose: () => void;
}

/** One person of the class at this bench: takes over, or leaves. */
function PersonRow({ bench, joining, onClose }: PanelProps & { readonly joining: JoiningRow }) {
  const [isAsked, setIsAsked] = useState(false);
  const { line, act } = useTold();
  const name = shownName(joining.name);
  const isHere = bench.joining?.id === joining.id;
  const leave = async () => {
    await bench.leave(joining.id);
    if (bench.joinings.length === 0) onClose();
    return `${name} left this bench.`;
  };
  return (
    <li className="row gap-x-4 gap-y-2 py-2 ruled">
      <p className="flex-[1_1_320px]">
        <b>{name}</b>, {shownName(joining.class.name)}, {shownName(joining.school.name)}
        {isHere && " (practices now)"}
      </p>
      {!isHere && <Button onClick={() => bench.practiceAs(joining.id).then(onClose)}>I am {name}</Button>}
      {isAsked ? (
        <>
          <p className="basis-full">
            {name}’s records stay on this bench. What is not sent yet goes to the class when {name} joins here again.
          </p>
          <Button className="primary" onClick={() => act(leave)}>
            Sign {name} out of this bench
          </Button>
          <Button onClick={() => setIsAsked(false)}>Stay</Button>
        </>
      ) : (
        <Button onClick={() => setIsAsked(true)}>Leave as {name}</Button>
      )}
      {line}
    </li>
  );
}

/** Who of the class is at this bench, and how it stands with sending. */
export function SchoolPanel({ bench, onClose }: PanelProps) {
  const { line, act } = useTold();
  const { state } = bench.sender;
  const sentences = [troubleSentence(state.trouble), clockSentence(state.clockAhead_ms)];
  const joinAsOther = () => {
    onClose();
    const isThere = location.hash === "#/join";
    location.hash = "#/join";
    // The page that says who joined begins anew.
    if (isThere) location.reload();
  };
  const again = async () => {
    await bench.sendAgain();
    const { waiting, trouble } = bench.sender.state;
    return waiting === 0 && trouble === null ? "The class has everything of this bench." : "";
  };
  return (
    <>
      <h3>Who is at this bench</h3>
      <ul className="plain">
        {bench.joinings.map((joining) => (
          <PersonRow key={joining.id} {...{ bench, joining, onClose }} />
        ))}
      </ul>
      <div className="row mt-4">
        <Button onClick={joinAsOther}>Join as someone else</Button>
      </div>
      <h3 className="mt-6">Records for the class</h3>
      <p role="status">
        {sendingWords(state)}.{" "}
        {state.waiting > 0 &&
          `${countText(state.waiting, "record or change", "records or changes")} of this bench ${state.waiting === 1 ? "is" : "are"} not with the class yet.`}
      </p>
      {sentences.map(
        (sentence) =>
          sentence !== null && (
            <p key={sentence} className="mt-2">
              {sentence}
            </p>
          ),
      )}
      <div className="row mt-4">
        <Button onClick={() => act(again)}>Send now</Button>
      </div>
      {line}
      <ChangesTold logbook={bench.current.logbook} version={bench.version} />
      <p className="mt-6 text-small text-soft">
        Instructors have <a href="#/instructor">their own page</a>.
      </p>
      {state.refused > 0 && <RefusedList logbook={bench.current.logbook} count={state.refused} />}
    </>
  );
}
