import { fileURLToPath } from 'node:url';

/** Where pictures of the tests are kept, to be looked at; not committed. */
export const ARTEFACTS = fileURLToPath(new URL('../artefacts/', import.meta.url));

/** The pictures of the extension's readme, which are packed with it: made anew where `PICTURES=1` is set. */
export const README_PICTURES = fileURLToPath(new URL('../../../packages/extension/media/pictures/', import.meta.url));
