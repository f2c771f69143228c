import { type FormEvent, useState } from "react";
import { readingText } from "../../../dialing/words";
import { reading, type Turn } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";
import { playWords } from "../../../zeroing/zeroWords";
import { MOST_PLAY, type PlaySession, STOPS_WANTED } from "./playSession";

const SIDES: readonly Turn[] = ["right", "left"];

function Answer({ play }: { readonly play: PlaySession }) {
  const [text, setText] = useState("");
  const answer = Number(text.replace(",", "."));
  const isNumber = text.trim() !== "" && answer >= 0 && answer <= MOST_PLAY;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isNumber && play.isReady) play.answer(answer);
  };
  return (
    <form className="zeroing-answer" onSubmit={submit}>
      <label htmlFor="play-answer">The play is</label>
      <input
        id="play-answer"
        className="field"
        inputMode="decimal"
        size={5}
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      <span>graduations</span>
      <button type="submit" className="button primary" disabled={!(isNumber && play.isReady)}>
        Mark it
      </button>
    </form>
  );
}

/** The exercise in words, the stops recorded so far, and the trainee's own number. */
export function PlayPanel({ play, profile }: { readonly play: PlaySession; readonly profile: Profile }) {
  return (
    <section className="panel zeroing-panel" aria-label="Find the play">
      <h2>
        Find the play <small>how far the dial turns before the cam follows</small>
      </h2>
      <p>
        Turn right until the cam's mark has just come to its line, and record the stop. Turn left until the mark comes
        to the same line, and record that stop too. The cam is in the same place both times; the dial is not. Record at
        least {STOPS_WANTED} stops each way, then enter how large the play is.
      </p>
      <table className="zeroing-table">
        <thead>
          <tr>
            <th scope="col">turning</th>
            <th scope="col">the dial’s reading</th>
          </tr>
        </thead>
        <tbody>
          {SIDES.map((side) => (
            <tr key={side}>
              <th scope="row">{side}</th>
              <td>
                {play.stops[side].map((stop) => readingText(reading(stop, profile.graduations), profile)).join(", ") ||
                  "–"}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="zeroing-last" role="status">
        {play.problem ?? ""}
      </p>
      {play.mark === null ? (
        <Answer play={play} />
      ) : (
        <p className="zeroing-headline" role="status">
          {playWords(play.mark)}
        </p>
      )}
    </section>
  );
}
