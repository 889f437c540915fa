export { fixAll, type Fixed } from './fix-all.js';
export { applyEdits, editsOf, type TextEdit } from './fixes.js';
