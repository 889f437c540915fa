/** How the name of a file that holds a plan ends. */
export const EXTENSION = '.cover';
