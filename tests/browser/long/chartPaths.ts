import { type AnyEventObject, type AnyStateMachine, createActor } from "xstate";
import { walkedChart } from "../../support/walkedChart";

/** A moment of a chart. */
export interface Place<Context> {
  readonly value: string;
  readonly context: Context;
}

/** One step along a path: an event, and where it leads. */
export interface ChartStep<Event, Context> {
  readonly event: Event;
  /** Told apart by this: a path is chosen for the arrows that it takes. */
  readonly arrow: string;
  readonly from: Place<Context>;
  readonly to: Place<Context>;
}

/** The arrows of a path up to a step, to tell where a page went astray. */
export const wayTo = (path: readonly { readonly arrow: string }[], step: number): string =>
  path
    .slice(0, step + 1)
    .map(({ arrow }) => arrow)
    .join("\n");

/** How many arrows of a path have not been taken yet; of paths with as many, the shorter one is worth more. */
function worth(path: readonly { readonly arrow: string }[], taken: ReadonlySet<string>): number {
  const fresh = new Set(path.map(({ arrow }) => arrow).filter((arrow) => !taken.has(arrow)));
  return fresh.size === 0 ? 0 : fresh.size - path.length / 1000;
}

/** Paths chosen until every arrow is taken: each time the one that is worth most. */
export function fewest<Step extends { readonly arrow: string }>(
  paths: readonly (readonly Step[])[],
): readonly (readonly Step[])[] {
  const chosen: (readonly Step[])[] = [];
  const taken = new Set<string>();
  let rest = paths.map((path) => ({ path, gain: worth(path, taken) }));
  while (rest.length > 0) {
    const best = rest.reduce((one, other) => (other.gain > one.gain ? other : one));
    chosen.push(best.path);
    for (const { arrow } of best.path) taken.add(arrow);
    rest = rest.map(({ path }) => ({ path, gain: worth(path, taken) })).filter(({ gain }) => gain > 0);
  }
  return chosen;
}

/**
 * Few paths that take every arrow which a page can be made to take.
 *
 * @param named - names an arrow by its event and where that leads
 * @param mayHappen - what the page offers in a place
 */
export function pagePaths<Event extends AnyEventObject, Context>(
  chart: Parameters<typeof walkedChart>[0],
  events: readonly Event[],
  named: (event: Event, to: Place<Context>) => string,
  mayHappen: (event: Event, from: Place<Context>) => boolean,
): readonly (readonly ChartStep<Event, Context>[])[] {
  const { paths } = walkedChart(chart, events, (event, place) => mayHappen(event, place as Place<Context>));
  const steps = paths.map((path) => {
    const actor = createActor(chart as AnyStateMachine).start();
    const look = () => actor.getSnapshot() as Place<Context>;
    return path.map((event): ChartStep<Event, Context> => {
      const from = look();
      actor.send(event);
      const to = look();
      return { event, arrow: `${from.value} by ${named(event, to)} to ${to.value}`, from, to };
    });
  });
  return fewest(steps);
}
