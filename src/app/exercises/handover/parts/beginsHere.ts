/** Looks of a work that has the focus as a whole: its heading is marked, not a frame as large as the screen. */
export const BEGINS_HERE = "focus-visible:outline-none [&:focus-visible>:first-child_h2]:underline";
