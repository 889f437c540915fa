import { mkdirSync, rmSync } from 'node:fs';
import { ARTEFACTS } from './artefacts.js';

/** Pictures of earlier runs say nothing about this one. */
export default function setup(): void {
    rmSync(ARTEFACTS, { recursive: true, force: true });
    mkdirSync(ARTEFACTS, { recursive: true });
}
