import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The folder of this bundle, into which the build lays the fonts. */
declare const __dirname: string;

/** The letters of everything printed: Noto Sans (SIL Open Font License 1.1), the same on every machine. */
export interface Letters {
    readonly regular: Uint8Array;
    readonly bold: Uint8Array;
}

/** Reads the fonts that lie beside the bundle. */
export function readLetters(): Letters {
    const read = (name: string): Uint8Array => readFileSync(join(__dirname, 'fonts', `${name}.ttf`));
    return { regular: read('NotoSans_400Regular'), bold: read('NotoSans_700Bold') };
}
