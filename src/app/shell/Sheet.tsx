import { type ReactNode, type SyntheticEvent, useEffect, useRef } from "react";
import "./sheet.css";

interface SheetProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  /** On the button that closes it, where that answers a question. */
  readonly closeWord?: string;
  readonly children: ReactNode;
}

/** A modal sheet on the browser's own dialog: Escape closes it, and focus returns to where it was. */
export function Sheet({ title, isOpen, onClose, closeWord = "Close", children }: SheetProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    if (isOpen) element?.showModal();
    else element?.close();
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
