/** An assignment that somebody wants to begin. */
export interface AskedToBegin {
  readonly assignmentId: string;
  readonly person: { readonly id: string; readonly name: string };
}

let asked: AskedToBegin | null = null;

/** What was asked for on the start page, until the page of the sittings takes it up. */
export const toBegin = {
  ask(wanted: AskedToBegin): void {
    asked = wanted;
  },
  /** Takes it up, once. */
  take(): AskedToBegin | null {
    const wanted = asked;
    asked = null;
    return wanted;
  },
};
