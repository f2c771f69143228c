import type { ReactNode } from "react";
import type { LessonGlance } from "../../drill/course/lessonGlance";
import type { CourseProgress } from "../../progress/courseProgress";
import { DialDrawing } from "../hand/dial/DialDrawing";
import { FIRST_FACE } from "../hand/dial/firstFace";
import { WordLink } from "../words/WordLink";
import { CourseList } from "./CourseList";
import { lessonAddress, lessonSize } from "./lessonWords";
import "./start.css";

interface NextLessonProps {
  readonly next: LessonGlance | null;
  readonly isReturning: boolean;
}

/** Leads to what there is to do now. */
function Go({ href, children }: { readonly href: string; readonly children: ReactNode }) {
  return (
    <a
      className="button primary start-go mt-5 py-3 px-6 text-lead font-semibold phone:w-full phone:justify-center"
      href={href}
    >
      {children}
    </a>
  );
}

/** The one thing to do now. */
function NextLesson({ next, isReturning }: NextLessonProps) {
  if (next === null) {
    return (
      <section className="start-now plate p-6 border-t-2 border-t-accent" aria-labelledby="start-now">
        <h1 id="start-now">All lessons are done</h1>
        <p>Do any of them again below, or sit a test of your instructor’s.</p>
        <Go href="#/sittings">Choose a sheet</Go>
      </section>
    );
  }
  const place = `lesson ${next.number}`;
  return (
    <section
      className="start-now grid items-center gap-6 p-6 plate border-t-2 border-t-accent phone:p-5 phone:pb-6 grid-cols-[minmax(0,1fr)_auto] phone:grid-cols-[minmax(0,1fr)]"
      aria-labelledby="start-now"
    >
      <div>
        <h1 id="start-now">
          {isReturning ? `Go on with ${place}` : "Start here"}
          <span className="visually-hidden">.</span>
        </h1>
        <p className="start-title mt-2 mb-4 text-title">
          {isReturning ? next.title : `Lesson ${next.number}, ${next.title}`}
          <small className="whitespace-nowrap phone:block"> about {lessonSize(next)}</small>
        </p>
        <p>{next.teaches}</p>
        <Go href={lessonAddress(next)}>
          {isReturning ? "Go on" : "Start"}
          <span className="visually-hidden"> with {place}</span>
        </Go>
        {!isReturning && (
          <p className="start-soft max-w-[30em] mt-5 text-small text-soft">
            You dial a lock whose combination is on the screen, and see inside why it opens or not. New words are
            explained: <WordLink word="arrival">arrival</WordLink>, <WordLink word="gate">gate</WordLink>,{" "}
            <WordLink word="spin-off">spin off</WordLink>.
          </p>
        )}
      </div>
      <div className="start-picture dial w-[240px] cursor-default phone:hidden" aria-hidden="true">
        <DialDrawing
          {...{ profile: FIRST_FACE, position: 0, ringTurn: 0, windUp: 0, surround: 0 }}
          {...{ pointTo: null, hub: null, isOpen: false, changingIndex: undefined }}
        />
      </div>
    </section>
  );
}

interface StartPageProps {
  readonly progress: CourseProgress;
  /** Whether anything was practiced here before. */
  readonly isReturning: boolean;
  /** Whether it is known yet who is here; until then nobody is greeted. */
  readonly isKnown: boolean;
  readonly problem?: ReactNode;
  readonly cards?: ReactNode;
  readonly who?: ReactNode;
}

/** The start page as it is drawn, whoever is here. */
export function StartPage({ progress, isReturning, isKnown, problem, cards, who }: StartPageProps) {
  return (
    <main
      className="start page gap-6 max-w-[1120px] pt-6 focus:outline-none"
      id="content"
      tabIndex={-1}
      aria-busy={!isKnown}
    >
      {problem}
      <div className={`start-top grid grid-cols-[minmax(0,1fr)] gap-6 ${isKnown ? "" : "invisible"}`}>
        <NextLesson next={progress.next} isReturning={isReturning} />
        {cards}
      </div>
      {who}
      <p className="text-small text-soft">
        A mouse is not a dial: print one for your camera, or turn an encoder.{" "}
        <a href="#/dial?back=%23%2Fstart">Set up a real dial</a>.
      </p>
      <CourseList {...progress} />
    </main>
  );
}
