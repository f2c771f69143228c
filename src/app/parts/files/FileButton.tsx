import type { ReactNode } from "react";

interface AnyFileButtonProps {
  /** What may be chosen, such as ".json". */
  readonly accept: string;
  readonly title?: string;
  /** Whether it is the first thing to do here. */
  readonly isPrimary?: boolean;
  readonly isDisabled?: boolean;
  /** The words on the button, which are also its name. */
  readonly children: ReactNode;
}

interface FilesButtonProps extends AnyFileButtonProps {
  readonly isMany?: boolean;
  readonly onFiles: (files: readonly File[]) => void;
}

/** A button that has files chosen, many at once where many may be. Nothing is read here. */
export function FilesButton({ accept, title, isPrimary, isDisabled, isMany = true, ...rest }: FilesButtonProps) {
  const { onFiles, children } = rest;
  return (
    <label
      className={`button file-button relative inline-flex items-center justify-center w-max max-w-full has-disabled:text-soft has-disabled:cursor-not-allowed ${isPrimary ? "primary" : ""}`}
      title={title}
    >
      {children}
      <input
        type="file"
        className="visually-hidden"
        accept={accept}
        multiple={isMany}
        disabled={isDisabled}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          // The same file may be chosen again once it has been mended.
          event.currentTarget.value = "";
          if (files.length > 0) onFiles(files);
        }}
      />
    </label>
  );
}

interface FileButtonProps extends AnyFileButtonProps {
  readonly onFile: (file: File) => void;
}

/** A button that has one file chosen. */
export function FileButton({ onFile, ...rest }: FileButtonProps) {
  return <FilesButton {...rest} isMany={false} onFiles={([file]) => file !== undefined && onFile(file)} />;
}
