import { useEffect } from "react";
import { useRemembered } from "../parts/storage/remembered";
import { putOn, THEMES } from "./theme";

/** The theme, and the way to the next one. */
export function useTheme() {
  const [theme, setTheme] = useRemembered("theme", THEMES);
  useEffect(() => putOn(theme), [theme]);
  const next = THEMES[(THEMES.indexOf(theme) + 1) % THEMES.length] ?? "system";
  return { theme, change: () => setTheme(next) };
}
