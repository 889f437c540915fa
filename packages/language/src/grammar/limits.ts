/** Blocks open at once: deeper than any plan nests, and shallow enough for every stack. */
export const DEEPEST_BLOCK = 60;
/** UTF-16 units: some 20 000 lines. The tree of a text takes about 160 times its size in memory. */
export const LONGEST_TEXT = 1_000_000;
