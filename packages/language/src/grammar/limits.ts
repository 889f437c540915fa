/** Blocks open at once: deeper than any plan nests, and shallow enough for every stack. */
export const DEEPEST_BLOCK = 60;
