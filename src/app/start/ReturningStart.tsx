import type { ReactNode } from "react";
import { useAsked, useLogbook } from "../keeping/useLogbook";
import { Notice } from "../parts/Notice";
import { StartPage } from "./StartPage";
import { FIRST_VISIT, type StartData, startData } from "./startData";
import { dailyAddress, dailyWords, toBeatAddress, toBeatWords, turnedWords } from "./startWords";

interface CardProps {
  readonly id: string;
  readonly title: string;
  readonly children: ReactNode;
}

function Card({ id, title, children }: CardProps) {
  return (
    <section className="card items-start gap-3 px-6 py-5" aria-labelledby={id}>
      <h2 id={id} className="text-soft">
        {title}
      </h2>
      {children}
    </section>
  );
}

function Daily({ daily }: Pick<StartData, "daily">) {
  const address = daily === null ? null : dailyAddress(daily);
  return (
    <Card id="start-daily" title="Today’s two minutes">
      {daily === null || address === null ? (
        <p>Nothing is missed or due today. Go on with the course.</p>
      ) : (
        <>
          <p>{dailyWords(daily)}</p>
          <a className="button mt-3" href={address}>
            Practice for two minutes
          </a>
        </>
      )}
    </Card>
  );
}

function ToBeat({ toBeat }: Pick<StartData, "toBeat">) {
  if (toBeat === null) {
    return (
      <Card id="start-beat" title="Your number to beat">
        <p>Your first opening sets it.</p>
      </Card>
    );
  }
  const { figure, of } = toBeatWords(toBeat);
  const address = toBeatAddress(toBeat);
  return (
    <Card id="start-beat" title="Your number to beat">
      <p className="text-title">{figure}</p>
      <p>{of}</p>
      {address !== null && (
        <a className="button mt-3" href={address}>
          Beat it on the bench
        </a>
      )}
    </Card>
  );
}

/** The start page where somebody has been before: what they did comes from the logbook. */
export function ReturningStart() {
  const current = useLogbook();
  const { answer, problem } = useAsked(`start ${current?.version ?? "closed"}`, async () =>
    current === null ? null : startData(current),
  );
  const { name, progress, daily, toBeat, turned, isReturning } = answer ?? FIRST_VISIT;
  const turnedBy = turnedWords(turned);
  return (
    <StartPage
      {...{ progress, isReturning }}
      isKnown={answer !== null || problem !== null}
      problem={
        problem !== null && <Notice>Your logbook cannot be read, so no lesson is marked as done: {problem}</Notice>
      }
      cards={
        isReturning && (
          <div className="start-cards grid gap-6">
            <Daily daily={daily} />
            <ToBeat toBeat={toBeat} />
            {turnedBy !== null && <p className="text-small text-soft">{turnedBy}</p>}
          </div>
        )
      }
      who={
        isReturning &&
        name !== null && (
          <p className="text-small text-soft">
            This is {name}’s page. <a href="#/logbook">Not you? Choose who practices in the logbook</a>.
          </p>
        )
      }
    />
  );
}
