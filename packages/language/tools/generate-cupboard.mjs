// Reads the standard cupboard once, at build time: what the program starts from is plain data, not text to parse.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadSource } from './load-source.mjs';

const FOLDER = 'packages/language/src/cupboard';

/** What a plan asks of the cupboard; names in use, spellings and the like are checked by the cupboard's own tests. */
const KEPT = ['file', 'pieces', 'kinds', 'substances', 'diets', 'codes'];

export const standardCupboard = {
    name: 'the standard cupboard',
    async outputs({ root }) {
        const { parseText, readFile } = await loadSource('packages/language/src/plan/read-text.ts');
        const files = readdirSync(join(root, FOLDER)).filter((name) => name.endsWith('.cover'));
        const texts = {};
        const readings = files.toSorted().map((name) => {
            const text = readFileSync(join(root, FOLDER, name), 'utf8');
            const file = `cupboard/${name}`;
            texts[file] = text;
            const reading = readFile(file, text, parseText(text));
            if (reading.syntax.length > 0) {
                throw new Error(`${file}: ${reading.syntax[0].message}`);
            }
            return Object.fromEntries(KEPT.map((key) => [key, reading[key]]));
        });
        return [
            output('standard', 'standardReadings', readings),
            // Only the editor shows the texts; they stay out of the commands' bundle.
            output('texts', 'standardTexts', texts),
        ];
    },
};

function output(name, variable, data) {
    // As a text to JSON.parse: an engine reads that faster than an object literal.
    const text = `export const ${variable} = ${JSON.stringify(JSON.stringify(data))};\n`;
    return { path: `${FOLDER}/generated/${name}.ts`, text, isCommitted: false };
}
