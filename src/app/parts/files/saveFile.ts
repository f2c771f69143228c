/** A file ready to be saved. */
export interface SavedFile {
  readonly name: string;
  /** Media type. */
  readonly type: string;
  readonly text: string;
}

/** Hands a file to the browser to be saved, as text or as it came. */
export function saveFile({ name, type, text }: Omit<SavedFile, "text"> & { readonly text: string | Blob }): void {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the file by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
