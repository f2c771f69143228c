import { focusDial } from "./focusDial";
import "./skipToDial.css";

/** The first stop of the Tab key: past the head and the settings, straight to the dial. Seen while it has the focus. */
export function SkipToDial() {
  const skip = () => {
    focusDial();
    document.querySelector(".dial")?.scrollIntoView({ block: "nearest" });
  };
  return (
    <button type="button" className="button skip-to-dial" onClick={skip}>
      Skip to the dial
    </button>
  );
}
