export { decodeText, LARGEST_FILE_BYTES } from '../plan/decode-text.js';
export { fixAll, type Fixed } from './fix-all.js';
export { applyEdits, editsOf, type TextEdit } from './fixes.js';
export { formatEdits, formatText } from './format.js';
export { clientDisk } from './client-disk.js';
export type { Disk } from './disk.js';
export * from './requests.js';
export { startLanguageServer, type ServerInfo } from './server.js';
export { CUPBOARD_SCHEME, RULE_SCHEME, VIRTUAL_TEXT_REQUEST } from './virtual-texts.js';
