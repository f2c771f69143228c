import { createTestModel } from "@xstate/test";
import { expect } from "vitest";
import { type AnyEventObject, type AnyStateMachine, createActor } from "xstate";
import { arrowsLeft } from "./drawnArrows";

/** A chart as these walks need it: any that emits nothing and takes no input. */
type Chart = Parameters<typeof createTestModel>[0];
interface Place {
  readonly value: unknown;
  readonly context: unknown;
  can(event: AnyEventObject): boolean;
}

/** More states with memory than any chart here has; a walk that comes to more of them would never end. */
const MOST_PLACES = 2000;

const key = ({ value, context }: Place) => JSON.stringify([value, context]);

/** A step of a path: where it begins, and the event that is taken there. */
interface Step<Event> {
  readonly from: Place;
  readonly event: Event;
}

/**
 * The shortest paths that take every event from every state with every memory.
 *
 * @param events - all that may happen
 * @param mayHappen - keeps a chart that counts from being walked for ever: false for what would only be more of the same
 */
export function walkedChart<Event extends AnyEventObject>(
  chart: Chart,
  events: readonly Event[],
  mayHappen: (event: Event, place: Place) => boolean = () => true,
) {
  const takenIn = (place: Place) => events.filter((event) => place.can(event) && mayHappen(event, place));
  const seen = new Set<string>();
  const walk = {
    serializeState: (state: unknown, event: unknown, from: unknown) => {
      const place = key(state as Place);
      if (seen.add(place).size > MOST_PLACES) {
        const last = place.slice(0, 200);
        throw new Error(
          `More than ${MOST_PLACES} states with memory: let mayHappen say where to stop. The last: ${last}`,
        );
      }
      return `${place} by ${JSON.stringify(event)} from ${from ? key(from as Place) : "nowhere"}` as never;
    },
  };
  const paths = createTestModel(chart, walk)
    .getShortestPaths({ ...walk, events: (state) => takenIn(state as never as Place) })
    .map((path) => {
      const places = [...path.steps.map(({ state }) => state), path.state] as never as Place[];
      const steps = path.steps.slice(1).map(({ event }, i): Step<Event> => {
        const from = (path.steps[i] ?? path).state as never as Place;
        return { from, event: event as never as Event };
      });
      return { places, steps };
    });
  const remembered = new Map(paths.flatMap(({ places }) => places.map((place) => [key(place), place] as const)));
  const arrow = (from: Place, event: Event) => `${key(from)} ${JSON.stringify(event)}`;
  const all = [...remembered.values()].flatMap((from) => takenIn(from).map((event) => arrow(from, event)));
  const allSteps = paths.flatMap(({ steps }) => steps);
  const taken = new Set(allSteps.map(({ from, event }) => arrow(from, event)));
  return {
    paths: paths.map(({ steps }) => steps.map(({ event }) => event)),
    states: [...new Set([...remembered.values()].map(({ value }) => String(value)))].sort(),
    /** How many states with memory there are. */
    places: remembered.size,
    arrows: taken.size,
    /** Arrows as drawn that nothing takes. */
    unused: arrowsLeft(chart as AnyStateMachine, allSteps),
    untaken: all.filter((one) => !taken.has(one)),
  };
}

/** Makes every path of a walk happen again, and holds the chart to a plain description of what it should have come to. */
export function holdToPlain<Event extends AnyEventObject>(
  chart: Chart,
  paths: readonly (readonly Event[])[],
  plain: (events: readonly Event[]) => { readonly value: unknown; readonly context: unknown },
): void {
  for (const path of paths) {
    const actor = createActor(chart).start();
    for (const event of path) actor.send(event);
    const { value, context } = actor.getSnapshot() as Place;
    expect({ value, context }, JSON.stringify(path)).toEqual(plain(path));
  }
}
