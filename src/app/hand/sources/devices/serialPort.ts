/** As much of Web Serial as is used: the compiler's library does not know it. */
export interface SerialPortLike extends EventTarget {
  readonly readable: ReadableStream<Uint8Array> | null;
  readonly writable: WritableStream<Uint8Array> | null;
  open(options: { readonly baudRate: number }): Promise<void>;
  close(): Promise<void>;
}

/** It is told of a port that was chosen before and is plugged in again: the port is the event's target. */
interface SerialLike extends EventTarget {
  requestPort(): Promise<SerialPortLike>;
}

/** The browser's serial ports; undefined where it has none, or does not give them to this page. */
export const serialPorts = (): SerialLike | undefined => (navigator as { readonly serial?: SerialLike }).serial;
