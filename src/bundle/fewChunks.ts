import type { Rolldown } from "vite";

type Graph = Parameters<Rolldown.CodeSplittingNameFunction>[1];

const BENCH = /\/BenchScreen\.tsx$/;
/** Screens without a dial: they share little with the bench. */
const WITHOUT_DIAL = /\/(Desk|Sheets|Words)Screen\.tsx$/;

/** Small parts that many screens need, each with what is needed with it nearly always: the first script names every file. */
const TOGETHER = [
  ["recordFields", /\/src\/(records\/(attemptRecord|masteryRule)|realdial\/sources\/(sourceSchema|dialDoubt))\.ts$/],
  [
    "parts",
    /\/src\/(app\/parts\/(Notice|Lines|HeadRow|TextTable|page\/(appVersion|takeFocus|focusHeading|useSize))|lock\/harmlessText|records\/(triedRight|skill)|realdial\/sources\/sourceKinds)\.tsx?$/,
  ],
  ["files", /\/src\/app\/parts\/files\/(csvFile|fileName|saveFile|copyText)\.ts$/],
  ["desk", /\/src\/app\/(desk\/.*|keeping\/reader\/(ReadingLine|logbookReader)|results\/ReadinessSettings)\.tsx?$/],
] as const;

/** Everything that a module cannot run without, itself included. */
function neededBy(id: string, graph: Graph, found = new Set<string>()): Set<string> {
  if (found.has(id)) return found;
  found.add(id);
  for (const next of graph.getModuleInfo(id)?.importedIds ?? []) neededBy(next, graph, found);
  return found;
}

/** Which of two files each module of the bench belongs to that others need too: those without a dial, or with one. */
function sharedParts(modules: readonly string[], graph: Graph): ReadonlyMap<string, "lock" | "hand"> {
  const later = modules.filter((id) => (graph.getModuleInfo(id)?.dynamicImporters.length ?? 0) > 0);
  const bench = later.find((id) => BENCH.test(id));
  if (bench === undefined) throw new Error("the bench is not fetched by itself any more");
  const others = later.filter((id) => id !== bench).map((id) => ({ id, needs: neededBy(id, graph) }));
  return new Map(
    [...neededBy(bench, graph)].flatMap((id) => {
      const sharing = others.filter(({ needs }) => needs.has(id));
      if (sharing.length === 0) return [];
      return [[id, sharing.some((one) => WITHOUT_DIAL.test(one.id)) ? "lock" : "hand"] as const];
    }),
  );
}

/**
 * Puts what first screens need into few files. Left to itself the build makes one for every set of screens that share
 * something, forty of them for the bench, and a browser asks for six at a time.
 */
export function fewChunks(): Rolldown.CodeSplittingOptions {
  const modules: string[] = [];
  let parts: ReturnType<typeof sharedParts> | null = null;
  const part = (name: "lock" | "hand", priority: number): Rolldown.CodeSplittingGroup => ({
    debugName: name,
    priority,
    // All modules are told here before the first is asked for its name.
    test: (id) => modules.push(id) > 0,
    name: (id, graph) => {
      parts ??= sharedParts(modules, graph);
      return parts.get(id) === name ? name : null;
    },
  });
  return {
    includeDependenciesRecursively: false,
    groups: [
      { name: "first", tags: ["$initial"], priority: 3 },
      part("lock", 2),
      part("hand", 1),
      ...TOGETHER.map(([name, test]) => ({ name, test, priority: 0 })),
    ],
  };
}
