import { KeepingQueue } from "./keepingQueue";

/** The way of this page's records to the logbook. */
export const keeping = new KeepingQueue(() => import("./keep"));
