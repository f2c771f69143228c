import { sizesFor } from "../../../fitting/fittingSizes";
import { type DialHeight, dialHeight, REACH } from "../../../fitting/geometry/dialHeight";
import type { Profile } from "../../../lock/profile";

/** What follows from the height of a dial. */
const HEIGHT_WORDS: Readonly<Record<DialHeight, string>> = {
  "in-reach": "",
  "too-low": " The dial of this door is lower.",
  "too-high": " The dial of this door is higher.",
};

/** Whose sizes this lock has, and how high its dial is. */
export function SizesNote({ profile }: { readonly profile: Profile }) {
  const own = Object.entries(profile.fitting ?? {}).map(([name, size]) => `${name} ${size}`);
  const { dialHeight_mm } = sizesFor(profile);
  return (
    <p className="text-small text-soft">
      {own.length === 0
        ? "This profile gives no sizes of its own for the fitting: all are training values."
        : `Sizes of this profile's own: ${own.join(", ")}. The others are training values.`}{" "}
      The middle of the dial is {dialHeight_mm} mm above the floor; {REACH.source} allows {REACH.least_in} to{" "}
      {REACH.most_in} in ({REACH.least_mm} to {REACH.most_mm} mm).{HEIGHT_WORDS[dialHeight(dialHeight_mm)]}
    </p>
  );
}
