import table from "../../../../../shared/fitting.json" with { type: "json" };
import { sizesFor } from "../../../../fitting/fittingSizes";
import { type DialHeight, dialHeight, OPEN_REACH, REACH } from "../../../../fitting/geometry/dialHeight";
import type { Profile, SizeName } from "../../../../lock/profile";

interface NoteProps {
  readonly profile: Profile;
}

/** Units as they stand behind a figure; a share and a count have none. */
const UNITS: Readonly<Record<string, string>> = {
  millimeters: " mm",
  "newton meters": " Nm",
  newtons: " N",
  "newtons per millimeter": " N/mm",
  graduations: " graduations",
};

/** A size as a person reads it. */
function sizeWords([size, figure]: readonly [string, number | undefined]): string {
  const { name, unit } = table.sizes[size as SizeName];
  return `${name} ${figure}${UNITS[unit] ?? ""}`;
}

/** Whose sizes this lock has: its profile's own, or those of the training lock. */
export function SizesNote({ profile }: NoteProps) {
  const own = Object.entries(profile.fitting ?? {}).map(sizeWords);
  return (
    <p className="text-small text-soft">
      {own.length === 0
        ? "This profile gives no sizes of its own for the fitting: all are training values."
        : `Sizes of this profile's own: ${own.join(", ")}. The others are training values.`}
    </p>
  );
}

/** What follows from the height of a dial. */
const HEIGHT_WORDS: Readonly<Record<DialHeight, string>> = {
  "in-reach": "",
  "too-low": " The dial of this door is lower.",
  "too-high": " The dial of this door is higher.",
};

const MM_PER_INCH = 25.4;

const limitsText = ({ source, least_in, most_in, least_mm, most_mm }: typeof REACH) =>
  `${least_in} to ${most_in} in (${least_mm} to ${most_mm} mm; ${source})`;

/** How high the dial of this door is, beside what the published standard allows. */
export function HeightNote({ profile }: NoteProps) {
  const { dialHeight_mm } = sizesFor(profile);
  return (
    <p className="text-small text-soft">
      The middle of the dial is {(dialHeight_mm / MM_PER_INCH).toFixed(1)} in ({dialHeight_mm} mm) above the floor. Door
      hardware may be at {limitsText(REACH)}.{HEIGHT_WORDS[dialHeight(dialHeight_mm)]} A hand with nothing in its way
      reaches {limitsText(OPEN_REACH)}.
    </p>
  );
}
