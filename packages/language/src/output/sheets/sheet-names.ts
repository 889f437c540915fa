/** The words that ask for sheets, in the order in which they are handed out. Alone in a file: a program that starts loads no more. */
export const SHEET_NAMES = [
    'captain',
    'server',
    'kitchen',
    'steward',
    'bar',
    'guide',
    'menu-card',
    'seat-list',
    'place-cards',
    'running-late',
] as const;

/** One of the words that ask for sheets. */
export type SheetName = (typeof SHEET_NAMES)[number];
