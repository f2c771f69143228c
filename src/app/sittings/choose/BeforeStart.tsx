import { useSelector } from "@xstate/react";
import { type FormEvent, type RefObject, useEffect, useRef } from "react";
import { markingScheme, schemeAdvice, schemeRows } from "../../../drill/marking/markingScheme";
import type { Sheet } from "../../../drill/sheet/sheet";
import { stationName } from "../../../drill/sheet/stationName";
import { NOTICE } from "../../../records/sitting/sittingRecord";
import { DEVICE_SLOT } from "../../hand/sources/deviceSlot";
import { setupHere } from "../../hand/sources/devices/panel/setupHere";
import { Button } from "../../parts/controls/Button";
import { Lines } from "../../parts/Lines";
import { Notice } from "../../parts/Notice";
import { stateOf } from "../../parts/page/ofChart";
import { StackedTable } from "../../parts/TextTable";
import { realDialWords } from "../../results/realDialAsked";
import { refusedSourceSentence } from "../../results/sourceWords";
import { ruleSentences, stationRow } from "../../verdicts/sittingWords";
import type { CurrentSitting } from "../session/currentSitting";
import type { SittingSession } from "../session/sittingSession";
import { SittingHead } from "../stations/SittingHead";
import { useWhoSits, type WhoForm, WhoSits } from "./WhoSits";

function Sentences({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section aria-label={title}>
      <h2 className="mb-3">{title}</h2>
      <Lines of={lines} className="grid gap-2" />
    </section>
  );
}

function Scheme({ sheet }: { readonly sheet: Sheet }) {
  const scheme = markingScheme(sheet);
  const [head = [], ...rows] = schemeRows(scheme);
  return (
    <section aria-label="Marking scheme">
      <h2 className="mb-3">Marking scheme {rows.length > 0 && <small>only these are marked</small>}</h2>
      {rows.length === 0 ? <p>This sheet has no marks: it is practice.</p> : <StackedTable head={head} rows={rows} />}
      {schemeAdvice(scheme).map((line) => (
        <p key={line} className="text-soft">
          {line}
        </p>
      ))}
    </section>
  );
}

/** What of the sheet the connected device cannot be used for. */
function RefusedSource({ sheet }: { readonly sheet: Sheet }) {
  const source = DEVICE_SLOT.source();
  if (source === null) return null;
  return sheet.stations.map((station, index) => {
    const refused = refusedSourceSentence(source, station, stationName(station, index));
    return refused && <Notice key={station.id}>{refused}</Notice>;
  });
}

/** The way to the setup of a real dial, where the sheet has a rule for one. */
function RealDial({ sheet }: { readonly sheet: Sheet }) {
  const words = realDialWords(sheet);
  if (words === null) return null;
  return (
    <p className="print:hidden">
      {words} <a href={setupHere()}>Set up a real dial</a>.
    </p>
  );
}

interface StartProps extends BeforeStartProps {
  readonly isReady: boolean;
  readonly form: WhoForm;
  readonly field: RefObject<HTMLInputElement | null>;
}

function StartButtons({ session, onLeave, isReady, form, field }: StartProps) {
  const start = useRef<HTMLButtonElement>(null);
  const { isAsking } = form;
  useEffect(() => {
    if (isReady) (isAsking ? field.current : start.current)?.focus();
  }, [isReady, isAsking, field]);
  return (
    <div className="row print:hidden">
      {isReady ? (
        // A button of its own: one and the same would submit with the very press that read the instructions.
        <button key="start" ref={start} type="submit" className="button primary">
          Start the clock
        </button>
      ) : (
        <Button key="read" className="primary" onClick={() => session.readInstructions()}>
          I have read it
        </Button>
      )}
      <Button onClick={() => print()}>Print this page</Button>
      <Button onClick={onLeave}>Choose another sheet</Button>
    </div>
  );
}

interface BeforeStartProps {
  readonly current: CurrentSitting;
  readonly session: SittingSession;
  readonly onLeave: () => void;
}

/** All that is to be read before the clock runs: what is asked, by which rules, and how it is marked. */
export function BeforeStart(props: BeforeStartProps) {
  const { current, session } = props;
  const { sheet } = session;
  const isReady = useSelector(session.chart, stateOf) === "ready";
  const form = useWhoSits(session);
  const field = useRef<HTMLInputElement>(null);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (!(await form.settle())) field.current?.focus();
    else current.start();
  };
  return (
    <form className="sitting-page page gap-6 max-w-[920px] pt-6" onSubmit={submit}>
      <header>
        <p className="text-title font-semibold">{sheet.title}</p>
        <p>{sheet.purpose}</p>
        <SittingHead session={session} />
      </header>
      <Sentences title="Instructions" lines={sheet.instructions ?? []} />
      <Sentences title="Cautions" lines={sheet.cautions ?? []} />
      <Sentences title="Rules" lines={ruleSentences(sheet)} />
      <section aria-label="Stations">
        <h2 className="mb-3">Stations</h2>
        <StackedTable
          head={["Station", "Exercise", "Lock", "Help", "Tries", "Time"]}
          rows={sheet.stations.map(stationRow)}
        />
      </section>
      <Scheme sheet={sheet} />
      <p className="mt-4 font-semibold">{NOTICE}</p>
      <RealDial sheet={sheet} />
      <RefusedSource sheet={sheet} />
      <WhoSits session={session} form={form} field={field} />
      <StartButtons {...props} isReady={isReady} form={form} field={field} />
    </form>
  );
}
