import type { Lesson } from "../../drill/sheet/course";
import { hasPracticed } from "../keeping/currentLogbook";
import { useAsked, useLogbook } from "../keeping/useLogbook";
import { Arrivals } from "../words/drawings/dialing";
import { WordLink } from "../words/WordLink";
import { CourseList } from "./CourseList";
import { FIRST_VISIT, type StartData, startData } from "./startData";
import { dailyAddress, dailyWords, lessonAddress, lessonSize, toBeatAddress, toBeatWords } from "./startWords";
import "./start.css";

interface NextLessonProps {
  readonly next: Lesson | null;
  readonly isReturning: boolean;
}

/** The one thing to do now. */
function NextLesson({ next, isReturning }: NextLessonProps) {
  if (next === null) {
    return (
      <section className="start-now" aria-labelledby="start-now">
        <h1 id="start-now">All lessons are done</h1>
        <p>Do any of them again below, or sit a test of your instructor’s.</p>
        <a className="button primary start-go" href="#/sittings">
          Choose a sheet
        </a>
      </section>
    );
  }
  const place = `lesson ${next.number}`;
  return (
    <section className="start-now" aria-labelledby="start-now">
      <div>
        <h1 id="start-now">
          {isReturning ? `Go on with ${place}` : "Start here"}
          <span className="visually-hidden">.</span>
        </h1>
        <p className="start-title">
          {isReturning ? next.sheet.title : `Lesson ${next.number}, ${next.sheet.title}`}
          <small> about {lessonSize(next)}</small>
        </p>
        <p>{next.teaches}</p>
        <a className="button primary start-go" href={lessonAddress(next)}>
          {isReturning ? "Go on" : "Start"}
          <span className="visually-hidden"> with {place}</span>
        </a>
        {!isReturning && (
          <p className="start-soft">
            You dial a lock whose combination is on the screen, and see inside why it opens or not. New words are
            explained: <WordLink word="arrival">arrival</WordLink>, <WordLink word="gate">gate</WordLink>,{" "}
            <WordLink word="spin-off">spin off</WordLink>.
          </p>
        )}
      </div>
      <div className="start-picture" aria-hidden="true">
        <Arrivals />
      </div>
    </section>
  );
}

function Daily({ daily }: Pick<StartData, "daily">) {
  const address = daily === null ? null : dailyAddress(daily);
  return (
    <section className="start-card" aria-labelledby="start-daily">
      <h2 id="start-daily">Today’s two minutes</h2>
      {daily === null || address === null ? (
        <p>Nothing is missed or due today. Go on with the course.</p>
      ) : (
        <>
          <p>{dailyWords(daily)}</p>
          <a className="button" href={address}>
            Practice for two minutes
          </a>
        </>
      )}
    </section>
  );
}

function ToBeat({ toBeat }: Pick<StartData, "toBeat">) {
  if (toBeat === null) {
    return (
      <section className="start-card" aria-labelledby="start-beat">
        <h2 id="start-beat">Your number to beat</h2>
        <p>Your first opening sets it.</p>
      </section>
    );
  }
  const { figure, of } = toBeatWords(toBeat);
  const address = toBeatAddress(toBeat);
  return (
    <section className="start-card" aria-labelledby="start-beat">
      <h2 id="start-beat">Your number to beat</h2>
      <p className="start-figure">{figure}</p>
      <p>{of}</p>
      {address !== null && (
        <a className="button" href={address}>
          Beat it on the bench
        </a>
      )}
    </section>
  );
}

/** Where a visit begins: the lesson to take now, two minutes for today, a number to beat, and the whole course. */
export function StartScreen() {
  const current = useLogbook();
  const { answer, problem } = useAsked(`start ${current?.version ?? "closed"}`, async () =>
    current === null ? null : startData(current),
  );
  const { name, progress, daily, toBeat, isReturning } = answer ?? FIRST_VISIT;
  // Who has been here before is not greeted as a newcomer for a blink, and a newcomer does not wait.
  const isKnown = answer !== null || problem !== null || !hasPracticed();
  return (
    <main className="start" id="content" tabIndex={-1} aria-busy={!isKnown}>
      {problem !== null && (
        <p className="told-box" role="alert">
          Your logbook cannot be read, so no lesson is marked as done: {problem}
        </p>
      )}
      <div className={isKnown ? "start-top" : "start-top is-waiting"}>
        <NextLesson next={progress.next} isReturning={isReturning} />
        {isReturning && (
          <div className="start-cards">
            <Daily daily={daily} />
            <ToBeat toBeat={toBeat} />
          </div>
        )}
      </div>
      {isReturning && name !== null && (
        <p className="start-who">
          This is {name}’s page. <a href="#/logbook">Not you? Choose who practices in the logbook</a>.
        </p>
      )}
      <CourseList {...progress} />
    </main>
  );
}
