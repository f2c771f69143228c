import { type RefObject, useRef, useState } from "react";
import type * as z from "zod/mini";
import { classCode, codeList } from "../../../school/wire/classWire";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { type Choices, Select } from "../../parts/controls/Select";
import { clockText, dayText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import { QrPicture } from "../../parts/qr/QrPicture";
import { ToldLine, useDoing } from "../../parts/Told";
import { isOwnAddress, joinAddress } from "../address/classroomAddress";
import type { OfClass } from "../asking/classProps";

type Code = z.infer<typeof classCode>;

const HOURS: Choices = [
  ["1", "1 hour"],
  ["12", "12 hours"],
  ["168", "7 days"],
  ["336", "14 days"],
];

/** Read from the last row of a class. */
const CODE_SIZE = { fontSize: "clamp(36px, 6vw, 76px)" };

const untilText = ({ expiresAt }: Code) => `until ${dayText(expiresAt)}, ${clockText(expiresAt)}`;

interface ProjectedProps {
  readonly code: Code;
  readonly place: RefObject<HTMLDivElement | null>;
}

/** What stands before the class: the code, large, and the way to the page where it is entered. */
function Projected({ code, place }: ProjectedProps) {
  return (
    <div className="class-code row gap-6 justify-center p-5 bg-plate" ref={place}>
      <QrPicture
        className="w-[min(300px,100%)]"
        address={joinAddress()}
        label="QR code of the page where one joins a class"
      />
      <div className="stack flex-[1_1_320px]">
        <p>Open {joinAddress()} or scan the QR code, then enter this class code:</p>
        <p className="font-semibold">
          <b className="whitespace-nowrap" style={CODE_SIZE}>
            {code.code}
          </b>
        </p>
        <p className="text-soft">Good {untilText(code)}.</p>
      </div>
    </div>
  );
}

const OWN_ADDRESS =
  "You opened this page by an address that only this machine knows. Open it by the network address that the server printed when it started. Then the QR code and the cards work on other devices.";

/** The code of a class, and new ones. */
export function CodePanel({ asking, one }: OfClass) {
  const [version, setVersion] = useState(0);
  const [hours, setHours] = useState("12");
  const place = useRef<HTMLDivElement>(null);
  const path = `/classes/${one.id}/codes`;
  const { answer, problem } = useAsked(`codes ${one.id} ${version}`, () => asking.read(path, codeList));
  const { told, act } = useDoing();
  const make = async () => {
    const { code } = await asking.change(path, classCode, { hours: Number(hours) });
    setVersion(version + 1);
    return `The new code is ${code}.`;
  };
  const end = ({ code }: Code) =>
    act(async () => {
      await asking.act(`${path}/revoke`, { code });
      setVersion(version + 1);
      return `${code} is not good any more. Whoever joined by it stays in the class.`;
    });
  const [latest, ...others] = answer?.codes ?? [];
  return (
    <section className="stack gap-5" aria-labelledby="class-join">
      <h2 id="class-join">Join this class</h2>
      {problem !== null && <Notice className="">{problem}</Notice>}
      {latest !== undefined && <Projected code={latest} place={place} />}
      {answer?.codes.length === 0 && <p>This class has no code now. Make one, so that apprentices can join.</p>}
      <div className="row">
        <label className="row gap-2">
          Good for
          <Select value={hours} choices={HOURS} onChoice={setHours} />
        </label>
        <Button className={latest === undefined ? "primary" : ""} onClick={() => act(make)}>
          New code
        </Button>
        {latest !== undefined && <Button onClick={() => end(latest)}>End the code {latest.code}</Button>}
        {latest !== undefined && document.fullscreenEnabled && (
          <Button onClick={() => place.current?.requestFullscreen()}>Show it on the whole screen</Button>
        )}
      </div>
      {others.length > 0 && (
        <ul className="plain">
          {others.map((code) => (
            <li key={code.code} className="row ruled py-2">
              {code.code} is good too, {untilText(code)}.
              <Button className="slim" onClick={() => end(code)}>
                End it<span className="visually-hidden">: {code.code}</span>
              </Button>
            </li>
          ))}
        </ul>
      )}
      <ToldLine told={told} />
      {isOwnAddress() && <p className="notice">{OWN_ADDRESS}</p>}
    </section>
  );
}
