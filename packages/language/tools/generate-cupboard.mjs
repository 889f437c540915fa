// Reads the standard cupboard once, at build time: what the program starts from is plain data, not text to parse.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadSource } from './load-source.mjs';

const FOLDER = 'packages/language/src/cupboard';

/** The shelves in the order in which `standard.ts` opens them, and what of a file stands on each. */
const SHELVES = {
    pieces: ({ pieces }) => pieces,
    kinds: ({ kinds }) => kinds.filter(({ sort }) => sort === 'kind'),
    drinks: ({ kinds }) => kinds.filter(({ sort }) => sort === 'drink'),
    substances: ({ substances }) => substances,
    diets: ({ diets }) => diets,
    codes: ({ codes }) => codes,
};

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
            return reading;
        });
        const index = {};
        let declarations = '';
        for (const [shelf, things] of Object.entries(SHELVES)) {
            index[shelf] = readings.flatMap(things).map((thing) => {
                const text = inOneByte(JSON.stringify(thing));
                declarations += text;
                return [thing.name, text.length];
            });
        }
        return [
            output('standard', { standardIndex: inOneByte(JSON.stringify(index)), standardDeclarations: declarations }),
            // Only the editor shows the texts; they stay out of the commands' bundle.
            output('texts', { standardTexts: JSON.stringify(texts) }),
        ];
    },
};

/** JSON whose characters an engine keeps in one byte each. */
function inOneByte(json) {
    return json.replace(/[^\0-\xff]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

function output(name, jsons) {
    // As texts to JSON.parse: an engine reads that faster than an object literal.
    const lines = Object.entries(jsons).map(
        ([variable, json]) => `export const ${variable} = ${JSON.stringify(json)};\n`,
    );
    return { path: `${FOLDER}/generated/${name}.ts`, text: lines.join(''), isCommitted: false };
}
