import type { Station } from "./sheet";

/** What a station is called, wherever a sheet is shown: its title, or its place from 1. */
export function stationName({ title }: Pick<Station, "title">, index: number): string {
  return title === undefined || title.trim() === "" ? `Station ${index + 1}` : title;
}
