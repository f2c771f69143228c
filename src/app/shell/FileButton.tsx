import type { ReactNode } from "react";

interface FileButtonProps {
  /** What may be chosen, such as ".json". */
  readonly accept: string;
  readonly onFile: (file: File) => void;
  readonly title?: string;
  /** The words on the button, which are also its name. */
  readonly children: ReactNode;
}

/** A button that has a file chosen. The file itself goes to whoever asked; nothing is read here. */
export function FileButton({ accept, onFile, title, children }: FileButtonProps) {
  return (
    <label className="button sheet-file" title={title}>
      {children}
      <input
        type="file"
        className="visually-hidden"
        accept={accept}
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          // The same file may be chosen again once it has been mended.
          event.currentTarget.value = "";
          if (file !== undefined) onFile(file);
        }}
      />
    </label>
  );
}
