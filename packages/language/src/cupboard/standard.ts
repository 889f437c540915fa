import type { Cupboard } from '../plan/cupboard.js';
import { mergeCupboards } from '../plan/merge.js';
import type { Reading } from '../plan/types.js';
import { standardReadings } from './generated/standard.js';

let standard: Cupboard | undefined;

/** The standard cupboard, read at build time: nothing of it is parsed when the program starts. */
export function standardCupboard(): Cupboard {
    standard ??= mergeCupboards([JSON.parse(standardReadings) as Reading[]]).cupboard;
    return standard;
}
