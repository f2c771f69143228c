/** What the address of the setup page asks for. */
export interface SetupAsked {
  /** Graduations of the dial that is set up: those of the bench that one came from. */
  readonly perTurn: 100 | 60;
  /** Where one came from, as an address of this app. */
  readonly back: string;
  /** Whether how to build a dial is asked for. */
  readonly isPrint: boolean;
}

/** An address of this app, and nothing else. */
const OWN = /^#\/[a-z]+(\?[^#]*)?$/;

/** Reads an address such as `#/dial?graduations=60&back=%23%2Fzeroing`. */
export function setupAsked(query: URLSearchParams): SetupAsked {
  const back = query.get("back") ?? "";
  return {
    perTurn: query.get("graduations") === "60" ? 60 : 100,
    back: OWN.test(back) && !back.startsWith("#/dial") ? back : "#/bench",
    isPrint: query.get("view") === "print",
  };
}

/** The same, as an address. */
export function setupAddress({ perTurn, back, isPrint }: SetupAsked): string {
  const query = new URLSearchParams({
    ...(isPrint ? { view: "print" } : {}),
    ...(perTurn === 60 ? { graduations: "60" } : {}),
    ...(back === "#/bench" ? {} : { back }),
  });
  return query.size === 0 ? "#/dial" : `#/dial?${query}`;
}
