import { fileURLToPath } from 'node:url';

/** Where pictures of the tests are kept, to be looked at; not committed. */
export const ARTEFACTS = fileURLToPath(new URL('../artefacts/', import.meta.url));
