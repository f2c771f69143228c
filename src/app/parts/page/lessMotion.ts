/** Whether whoever is here has asked the system for less motion. */
export const wantsLessMotion = (): boolean => matchMedia("(prefers-reduced-motion: reduce)").matches;
