/** Something that changes outside React and tells who listens; for `useSyncExternalStore`. */
export class Store {
  /** Grows with every change. */
  version = 0;
  private readonly listeners = new Set<() => void>();

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  protected changed(): void {
    this.version += 1;
    for (const listener of this.listeners) listener();
  }
}
