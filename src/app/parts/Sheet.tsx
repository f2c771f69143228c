import { type ReactNode, type SyntheticEvent, useEffect, useRef } from "react";
import { firstField } from "./firstField";
import "./sheet.css";

interface SheetProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  /** On the button that closes it, where that answers a question. */
  readonly closeWord?: string;
  readonly children: ReactNode;
}

/** Opens a dialog on its first field. The page behind stays where it is, also where its scroll bar goes. */
function open(dialog: HTMLDialogElement): void {
  const { style, clientWidth } = document.documentElement;
  style.setProperty("--scroll-bar", `${innerWidth - clientWidth}px`);
  dialog.showModal();
  firstField(dialog)?.focus();
}

/**
 * A modal dialog, the browser's own: Escape closes it, and focus returns to where it was. It opens on its first field.
 */
export function Sheet({ title, isOpen, onClose, closeWord = "Close", children }: SheetProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    if (element === null) return;
    if (isOpen) open(element);
    else element.close();
  }, [isOpen]);
  // Escape closes by way of the page, at once; the browser tells of a closing later, when the sheet may be open again.
  const onCancel = (event: SyntheticEvent<HTMLDialogElement>) => {
    if (event.target !== event.currentTarget) return;
    event.preventDefault();
    onClose();
  };
  const onClosed = () => {
    if (dialog.current?.open !== true) onClose();
  };
  return (
    <dialog ref={dialog} className="sheet" aria-label={title} onCancel={onCancel} onClose={onClosed}>
      {isOpen && (
        <>
          <header className="sheet-head">
            <h2>{title}</h2>
            <button type="button" className="button" onClick={onClose}>
              {closeWord}
            </button>
          </header>
          {children}
        </>
      )}
    </dialog>
  );
}
