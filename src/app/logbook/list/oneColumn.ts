/** Where what was chosen lies below its list, as in the style sheet. */
export const ONE_COLUMN = "(max-width: 1180px)";
