import { FILES_GONE_WORDS } from "./filesGone";

/** Says in the place of a part of a page that its files cannot be had. */
export function FilesGoneLine() {
  return (
    <p className="notice" role="alert">
      {FILES_GONE_WORDS}
    </p>
  );
}
