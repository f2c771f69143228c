/** What is asked for behind "instructor/" in the address of this page; empty for the classes. */
export const partNow = (): string => /^#\/instructor\/(\w+)/.exec(location.hash)?.[1] ?? "";

/** Views of a class, in the order of its tabs. */
export const CLASS_VIEWS = ["join", "roster", "assignments", "results", "board", "desk", "benches"] as const;

/** A view of a class. */
export type ClassView = (typeof CLASS_VIEWS)[number];

/** Address of a class. @param more - what else it asks for */
export const classAddress = (
  id: string,
  view: ClassView = "join",
  more: Readonly<Record<string, string>> = {},
): string => `#/instructor/class?${new URLSearchParams({ id, view, ...more })}`;

/** The view that an address asks for. */
export const classViewOf = (asked: string | null): ClassView => CLASS_VIEWS.find((one) => one === asked) ?? "join";

/** Address of this page for other devices, up to its hash. */
const pageAddress = (): string => location.href.replace(/#.*$/, "");

/** Where apprentices join; with a card's secret for who has one. */
export const joinAddress = (card?: string): string =>
  `${pageAddress()}#/join${card === undefined ? "" : `?card=${encodeURIComponent(card)}`}`;

/** Address of a link for one use. */
export const linkAddress = (kind: "invited" | "password", token: string): string =>
  `${pageAddress()}#/instructor/${kind}?token=${encodeURIComponent(token)}`;

const OWN = ["localhost", "127.0.0.1", "[::1]"];

/** Whether only this machine can open the page by the address that it has. */
export const isOwnAddress = (): boolean => OWN.includes(location.hostname);
