/** What the colors follow: the system, or a choice. */
export const THEMES = ["system", "light", "dark"] as const;

/** Puts a theme on the page (theme.css). */
export function putOn(theme: (typeof THEMES)[number]): void {
  const { dataset } = document.documentElement;
  if (theme === "system") delete dataset.theme;
  else dataset.theme = theme;
}
