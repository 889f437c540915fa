import { mkdirSync } from 'node:fs';
import { ARTEFACTS } from './artefacts.js';

/** Pictures of an earlier run stay until a newer one takes their place: another run may be making its own. */
export default function setup(): void {
    mkdirSync(ARTEFACTS, { recursive: true });
}
