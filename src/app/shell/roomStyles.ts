/*
 * The styles of what several screens share, before those of the theme: where two rules weigh the same the later one wins,
 * and a screen that is fetched later must not change which that is.
 */
import "../hand/hand.css";
import "../replay/result.css";
import "../words/words.css";
import "../parts/controls/controls.css";
import "../hand/dial/dial.css";
import "../parts/workplace.css";
