import { useEffect, useEffectEvent } from "react";
import { useFocusManager } from "react-aria/FocusScope";
import { Dialog, Modal, ModalOverlay } from "react-aria-components/Modal";
import { Button } from "./Button";
import type { DialogProps } from "./Dialog";

/** What one fills in or chooses; a button that has a file chosen is no field. */
const FIELDS = 'input:not([type="file"], [readonly]), select, textarea:not([readonly])';

/** Puts the focus on the first field, or else on the first thing to press. */
function FocusFirst() {
  const focus = useFocusManager();
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the dialog opens
  useEffect(() => {
    const field = focus?.focusFirst({ tabbable: true, accept: (one) => one.matches(FIELDS) });
    if (!field) focus?.focusFirst({ tabbable: true });
  }, []);
  return null;
}

declare global {
  /** What a system closes things by; not every browser has it. */
  var CloseWatcher: (new () => { onclose: (() => void) | null; destroy(): void }) | undefined;
}

/** Closes by the back gesture of a phone too, and by Escape while the focus is nowhere: what had it may be gone. */
function useCloseRequests(onClose: () => void): void {
  const close = useEffectEvent(onClose);
  useEffect(() => {
    const { CloseWatcher } = globalThis;
    if (CloseWatcher === undefined) return;
    const watcher = new CloseWatcher();
    watcher.onclose = () => close();
    return () => watcher.destroy();
  }, []);
}

/** A dialog as long as it is open. */
export function ModalDialog({ title, onClose, closeWord = "Close", children }: Omit<DialogProps, "isOpen">) {
  useCloseRequests(onClose);
  return (
    <ModalOverlay className="sheet-behind" isOpen onOpenChange={onClose}>
      <Modal className="sheet">
        <Dialog aria-label={title} className="sheet-page">
          <FocusFirst />
          <header className="sheet-head">
            <h2>{title}</h2>
            <Button onClick={onClose}>{closeWord}</Button>
          </header>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
