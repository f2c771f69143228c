import type { ReactNode } from "react";
import { fetchedLater } from "../page/fetchedLater";
import { DialogGone } from "./DialogGone";
import "./controls.css";

const ModalDialog = fetchedLater(async () => (await import("./ModalDialog")).ModalDialog, null, DialogGone);

export interface DialogProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  /** On the button that closes it, where that answers a question. */
  readonly closeWord?: string;
  readonly children: ReactNode;
}

/** What draws a dialog comes when one is opened, or about to be. */
export const fetchDialog = ModalDialog.fetchAhead;

/** A modal dialog: Escape closes it, and focus returns to where it was. It opens on its first field. */
export function Dialog({ isOpen, ...dialog }: DialogProps) {
  return isOpen ? <ModalDialog {...dialog} /> : null;
}
