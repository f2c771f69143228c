import type { ExportFile } from "./exportFiles";

/** Hands a file to the browser to be saved. */
export function saveFile({ name, type, text }: Omit<ExportFile, "told">): void {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the file by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
