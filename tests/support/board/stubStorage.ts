/** A stub of a page's storage; one that is full stores nothing more. */
export class StubStorage {
  readonly texts: Map<string, string>;
  /** Keys under which something was to be stored. */
  readonly asked = new Set<string>();
  isFull = false;

  constructor(texts: Readonly<Record<string, string>> = {}) {
    this.texts = new Map(Object.entries(texts));
  }

  readonly getItem = (key: string) => this.texts.get(key) ?? null;

  readonly setItem = (key: string, text: string) => {
    this.asked.add(key);
    if (this.isFull) throw new DOMException("no room", "QuotaExceededError");
    this.texts.set(key, text);
  };

  readonly removeItem = (key: string) => void this.texts.delete(key);
}
