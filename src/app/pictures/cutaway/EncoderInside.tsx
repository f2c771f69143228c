import { memo } from "react";
import type { Attempt } from "../../../dialing/attempt";
import { WordLink } from "../../words/WordLink";
import { CutawayFrame } from "./CutawayFrame";
import { cutawayView } from "./cutawayView";
import { boltWords, type Figures } from "./cutawayWords";
import { EncoderPicture } from "./EncoderPicture";
import { encoderRegisters, type Register, registerSentence, registerStateText } from "./encoderView";

/** An encoder lock has no wheels: what its encoder has counted, and the bolt that its motor lets go. */
export function EncoderInside({ attempt }: { attempt: Attempt; version: number; figures?: Figures }) {
  const view = cutawayView(attempt);
  const registers = encoderRegisters(attempt);
  return (
    <CutawayFrame words={<WordLink word="encoder-lock">encoder lock</WordLink>}>
      <div className="cutaway-picture">
        <EncoderPicture view={view} />
        <div className="cutaway-registers" aria-hidden="true">
          {registers.map((register) => (
            <RegisterPlate key={register.number} {...register} />
          ))}
        </div>
      </div>
      <ul className="visually-hidden">
        {registers.map((register) => (
          <li key={register.number}>{registerSentence(register)}</li>
        ))}
        <li>
          {view.isNoseDown ? "the motor lets the lever down" : "the motor holds the lever up"}, bolt{" "}
          {boltWords(view.retraction).join(" ")}
        </li>
      </ul>
    </CutawayFrame>
  );
}

/** One register: the way to turn, a pip for every arrival wanted, and what became of the stop. */
const RegisterPlate = memo(function RegisterPlate(register: Register) {
  const { number, turn, wanted, counted, state } = register;
  const kind = state === "counting" ? "cutaway-register cutaway-is-counting" : "cutaway-register";
  return (
    <div className={kind}>
      <div className="cutaway-name">
        number {number} <span className="cutaway-turn">{turn}</span>
      </div>
      <div className="cutaway-pips">
        {"●".repeat(Math.min(counted, wanted)) + "○".repeat(Math.max(0, wanted - counted))}
        {counted > wanted && <small>+{counted - wanted}</small>}
      </div>
      <div className={`cutaway-state cutaway-state-${state === "to come" ? "coming" : state}`}>
        {registerStateText(register)}
      </div>
    </div>
  );
});
