import type { Chance } from "./chance";

/** The same items in a random order, each order as likely as any other. Source: Fisher and Yates (1938). */
export function shuffled<T>(items: readonly T[], chance: Chance): T[] {
  const order = [...items];
  for (let i = order.length - 1; i > 0; i--) {
    const j = Math.floor(chance() * (i + 1));
    [order[i], order[j]] = [order[j] as T, order[i] as T];
  }
  return order;
}
