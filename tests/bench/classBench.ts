import { mkdtemp, rm } from "node:fs/promises";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { embeddedWeather, postgresWeather, type WeatherDatabase } from "../server/weather/weatherEngines";
import { deskLoad } from "./classServer/deskLoad";
import { liveLoad } from "./classServer/liveLoad";
import { recordsLoad } from "./classServer/recordsLoad";
import { tell } from "./classServer/told";

/*
 * The class server under load, on both databases; the server runs in a process of its own.
 *
 *   npm run bench:class -- --only live --engine PostgreSQL
 */

const { values: options } = parseArgs({
  options: { only: { type: "string", default: "" }, engine: { type: "string", default: "" } },
});

type Load = (name: string, weather: WeatherDatabase) => Promise<void>;

const LOADS: readonly (readonly [what: string, load: Load])[] = [
  ["records", (name, weather) => recordsLoad(name, weather, 30)],
  ["records", (name, weather) => recordsLoad(name, weather, 300)],
  ["live", (name, weather) => liveLoad(name, weather, 25)],
  ["live", (name, weather) => liveLoad(name, weather, 300)],
  ["desk", deskLoad],
];

const ENGINES = { embedded: embeddedWeather, PostgreSQL: postgresWeather } as const;

for (const [name, make] of Object.entries(ENGINES)) {
  if (options.engine !== "" && options.engine !== name) continue;
  for (const [what, load] of LOADS) {
    if (options.only !== "" && options.only !== what) continue;
    const folder = await mkdtemp(join(tmpdir(), "gatefall-bench-"));
    const weather = await make(folder);
    const [before = 0] = loadavg();
    await load(name, weather);
    tell(`  load of the machine ${before.toFixed(1)} before, ${(loadavg()[0] ?? 0).toFixed(1)} after`);
    await weather.remove();
    await rm(folder, { recursive: true, force: true });
  }
}
