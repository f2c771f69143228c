import type { ComponentType } from "react";
import type { SourceDescription } from "../../../realdial/sources/sourceDescription";
import { Store } from "../../parts/page/store";
import type { TurnDial, WatchedDial } from "./dialSource";

/** A dial on the screen, as a device turns it. */
export interface DialInHand extends Pick<WatchedDial, "perTurn" | "drawn" | "screenMoves"> {
  readonly turn: TurnDial;
}

/** Where a device and the dials on the screen meet. What drives a device is fetched when one is wanted, and not before. */
class DeviceSlot extends Store {
  private readonly dials = new Set<DialInHand>();
  /** What is shown below each dial while a device turns it. */
  Line: ComponentType | null = null;
  /** What a device is that turns the dials here; null while none does. */
  source: () => SourceDescription | null = () => null;

  /** The dial that came on the screen last. */
  get dial(): DialInHand | undefined {
    return [...this.dials].at(-1);
  }

  /** @returns takes it away again */
  put(dial: DialInHand): () => void {
    this.dials.add(dial);
    return () => this.dials.delete(dial);
  }

  show(Line: ComponentType | null): void {
    this.Line = Line;
    this.changed();
  }
}

/** The one of this page. */
export const DEVICE_SLOT = new DeviceSlot();
