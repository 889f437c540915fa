// The generators, in the order in which they run; each may read what the earlier ones wrote.
//
// A generator lives in a file of its own in this folder and exports
//   { name, outputs({ root }) }   where `outputs` resolves to a list of
//   { path, text, isCommitted }   `path` from the root with forward slashes; `isCommitted` false for git-ignored files.
// It may import the TypeScript sources through `load-source.mjs`. Same sources, same bytes.

import { apiPage } from './generate-api.mjs';
import { colouring } from './generate-colouring.mjs';
import { standardCupboard } from './generate-cupboard.mjs';
import { customsPage } from './generate-customs.mjs';
import { languagePage } from './generate-language.mjs';
import { plainGrammar } from './generate-plain-grammar.mjs';
import { pictures } from './generate-pictures.mjs';
import { rulePages, ruleRegistry } from './generate-rules.mjs';
import { snippets } from './generate-snippets.mjs';

export const generators = [
    plainGrammar,
    colouring,
    snippets,
    standardCupboard,
    customsPage,
    languagePage,
    ruleRegistry,
    rulePages,
    pictures,
    apiPage,
];
