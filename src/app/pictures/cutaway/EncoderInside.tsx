import { memo } from "react";
import type { Attempt } from "../../../dialing/attempt";
import { WordLink } from "../../words/WordLink";
import { CutawayFrame } from "./CutawayFrame";
import { cutawayView } from "./cutawayView";
import { boltWords, type Figures } from "./cutawayWords";
import { EncoderPicture } from "./EncoderPicture";
import { encoderRegisters, type Register, registerSentence, STATE_TEXT } from "./encoderView";

/** An encoder lock has no wheels: what its encoder has counted, and the bolt that its motor lets go. */
export function EncoderInside({ attempt }: { attempt: Attempt; version: number; figures?: Figures }) {
  const view = cutawayView(attempt);
  const registers = encoderRegisters(attempt);
  const lever = view.isNoseDown ? "the motor lets the lever down" : "the motor holds the lever up";
  return (
    <CutawayFrame
      words={<WordLink word="encoder-lock">encoder lock</WordLink>}
      sentences={[...registers.map(registerSentence), `${lever}, bolt ${boltWords(view.retraction).join(" ")}`]}
    >
      <EncoderPicture view={view} />
      <div
        className="cutaway-registers border border-hair rounded-corner mt-1 leading-[1.3] text-soft"
        aria-hidden="true"
      >
        {registers.map((register) => (
          <RegisterPlate key={register.number} {...register} />
        ))}
      </div>
    </CutawayFrame>
  );
}

const STATE_LOOK: Readonly<Record<Register["state"], string>> = {
  on: "text-ink font-semibold",
  off: "text-ink italic",
  counting: "text-accent",
  "to come": "",
};

/** One register: the way to turn, a pip for every arrival wanted, and what became of the stop. */
const RegisterPlate = memo(function RegisterPlate(register: Register) {
  const { number, turn, wanted, counted, state } = register;
  const kind = `px-3 py-1 border-t-2 ${state === "counting" ? "border-t-accent" : "border-t-transparent"}`;
  return (
    <div className={kind}>
      <div className="text-fine text-ink">
        number {number} <span className="text-soft">{turn}</span>
      </div>
      <div className="text-ink tracking-[0.25em] whitespace-nowrap">
        {"●".repeat(Math.min(counted, wanted)) + "○".repeat(Math.max(0, wanted - counted))}
        {counted > wanted && <small className="ml-1 text-[11px] tracking-[0]">+{counted - wanted}</small>}
      </div>
      <div className={STATE_LOOK[state]}>{STATE_TEXT[state]}</div>
    </div>
  );
});
