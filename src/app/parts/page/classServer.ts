/** Where the class server that sent this page answers, such as "/api"; null of a page that none sent: nothing is asked for then. */
export const classServer = (): string | null =>
  document.querySelector<HTMLMetaElement>("meta[name=class-server]")?.content ?? null;
