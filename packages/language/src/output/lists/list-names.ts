/** The words that ask for a list. Alone in a file: a program that starts loads no more. */
export const LIST_NAMES = ['pull', 'seats', 'run', 'allergens'] as const;

/** One of the words that ask for a list. */
export type ListName = (typeof LIST_NAMES)[number];

/** How a list is written. */
export const LIST_FORMATS = ['csv', 'markdown', 'json'] as const;

/** One of the ways a list is written. */
export type ListFormat = (typeof LIST_FORMATS)[number];
