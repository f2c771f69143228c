import { renderToStaticMarkup } from "react-dom/server";
import { BenchScreen } from "../exercises/bench/BenchScreen";
import { FilesGoneLine } from "../parts/page/FilesGoneLine";
import { FIRST_COURSE } from "../start/firstVisit";
import { StartPage } from "../start/StartPage";
import { seedAtZero } from "./firstBench";
import { Head } from "./Head";

/**
 * The start page of a first visit and the bench as markup. The build writes them into the page, so that head and dial are
 * there before any script; the script then draws the same in their place. No hand turns the dial before that, so nobody is
 * offered it.
 */
export const firstPicture = (): string => withoutFields(drawn());

/** Whoever looks for a field, a program that fills one in among them, finds the app's own and not one that is only painted. */
const withoutFields = (picture: string): string => picture.replace(/<input\b[^>]*>/g, "");

const drawn = () =>
  renderToStaticMarkup(
    <div className="first-picture">
      <Head page="start" />
      <div className="first-gone page">
        <FilesGoneLine />
      </div>
      <StartPage progress={FIRST_COURSE} isReturning={false} isKnown={true} />
      <div className="first-bench" inert={true} aria-hidden="true">
        <BenchScreen query={new URLSearchParams()} seed={seedAtZero()} />
      </div>
    </div>,
  );
