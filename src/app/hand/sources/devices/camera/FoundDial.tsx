import type { ShownDial } from "../../../../../realdial/printed/shownDial";

type Line = ShownDial["rings"][number];

const FOUND = "fill-none stroke-accent stroke-3";
const EXPECTED = `${FOUND} [stroke-dasharray:6_6]`;

const pathOf = (points: Line) => `M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join("L")}z`;

/** Outlines of what is found in a picture: whole where it is seen, broken where it is only expected. */
export function FoundDial({
  shown: { markers, rings },
  isSure,
}: {
  readonly shown: ShownDial;
  readonly isSure: boolean;
}) {
  const [seen, unseen] = [true, false].map((isSeen) => markers.filter((marker) => marker.isSeen === isSeen));
  const pathsOf = (lines: readonly Line[]) => lines.map(pathOf).join("");
  return (
    <>
      <path className={FOUND} d={pathsOf(seen?.map(({ corners }) => corners) ?? [])} />
      <path className={EXPECTED} d={pathsOf(unseen?.map(({ corners }) => corners) ?? [])} />
      <path className={isSure ? FOUND : EXPECTED} d={pathsOf(rings)} />
    </>
  );
}
