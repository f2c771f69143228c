import { join } from "node:path";
import { type OpenDatabase, openEmbedded, openPostgres } from "../../../src/server/database/openDatabase";
import { layEmptyDatabase } from "../support/emptyDatabase";
import { type PostgresServer, startPostgres } from "../support/postgresServer";

/** A database that servers in other processes run on, and that is opened here while none does. */
export interface WeatherDatabase {
  readonly data: string;
  /** Empty for the embedded one. */
  readonly address: string;
  readonly open: () => Promise<OpenDatabase>;
  readonly remove: () => Promise<void>;
}

/** The embedded database in a folder. */
export async function embeddedWeather(folder: string): Promise<WeatherDatabase> {
  const data = join(folder, "data");
  await layEmptyDatabase(data);
  return { data, address: "", open: () => openEmbedded(data), remove: async () => undefined };
}

/** A database of a PostgreSQL server, a new one where none is given. */
export async function postgresWeather(folder: string, given?: PostgresServer): Promise<WeatherDatabase> {
  const server = given ?? (await startPostgres());
  const address = await server.newDatabase(`weather_${process.pid}_${Math.round(performance.now())}`);
  return {
    data: join(folder, "data"),
    address,
    open: () => openPostgres(address),
    remove: given === undefined ? server.remove : async () => undefined,
  };
}
