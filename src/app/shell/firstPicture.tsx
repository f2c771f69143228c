import { renderToStaticMarkup } from "react-dom/server";
import { FIRST_COURSE } from "../start/firstVisit";
import { StartPage } from "../start/StartPage";
import { Head } from "./Head";

/**
 * The start page of a first visit as markup. The build writes it into the page, so that head and dial are there before any
 * script; the script then draws the same in its place.
 */
export const firstPicture = (): string =>
  renderToStaticMarkup(
    <div className="first-picture">
      <Head page="start" />
      <StartPage progress={FIRST_COURSE} isReturning={false} isKnown={true} />
    </div>,
  );
