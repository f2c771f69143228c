import { newSeed } from "../parts/page/newSeed";

/** The seed of this visit. What runs before anything is drawn has chosen it for the picture in the page, where there is one. */
export const visitSeed = (): number => Number(document.documentElement.dataset.seed ?? newSeed());
