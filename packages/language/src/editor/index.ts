export { fixAll, type Fixed } from './fix-all.js';
export { applyEdits, editsOf, type TextEdit } from './fixes.js';
export { formatEdits, formatText } from './format.js';
export type { Disk } from './disk.js';
export { startLanguageServer, type ServerInfo } from './server.js';
export { CUPBOARD_SCHEME, RULE_SCHEME, VIRTUAL_TEXT_REQUEST } from './virtual-texts.js';
