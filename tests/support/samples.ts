import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readExample } from '../../packages/language/src/rules/example.js';
import { rules } from '../../packages/language/src/rules/index.js';

/** A plan with all the files it may read, in memory. */
export interface Sample {
    readonly name: string;
    /** The file to check. */
    readonly file: string;
    readonly texts: Readonly<Record<string, string>>;
}

const root = fileURLToPath(new URL('../../', import.meta.url));

/** The files below a folder of the repository by their paths from its root, in order; none where there is no such folder. */
export function filesBelow(folder: string): Readonly<Record<string, string>> {
    const texts: Record<string, string> = {};
    const walk = (path: string): void => {
        const entries = readdirSync(root + path, { withFileTypes: true });
        for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
            const inner = `${path}/${entry.name}`;
            if (entry.isDirectory()) {
                walk(inner);
            } else {
                texts[inner] = readFileSync(root + inner, 'utf8');
            }
        }
    };
    try {
        walk(folder);
    } catch (failure) {
        if ((failure as NodeJS.ErrnoException).code !== 'ENOENT') {
            throw failure;
        }
    }
    return texts;
}

/** Every rule's own examples. */
export function ruleExamples(kind: 'wrong' | 'right'): readonly Sample[] {
    return rules.flatMap((rule) =>
        rule.examples[kind].map(({ text }, index) => {
            const { texts, file } = readExample(text, `${rule.id}.cover`);
            return { name: `${rule.id}, ${kind} ${index + 1}`, file, texts };
        }),
    );
}

/** Every plan of examples/, right and wrong. */
export function examplePlans(): readonly Sample[] {
    const texts = filesBelow('examples');
    return Object.keys(texts)
        .filter((path) => path.endsWith('.cover'))
        .map((file) => ({ name: file, file, texts }));
}

/** Every fixture of tests/rules and tests/fixes as it is before any fix. */
export function fixturePlans(): readonly Sample[] {
    return Object.entries({ ...filesBelow('tests/rules'), ...filesBelow('tests/fixes') })
        .filter(([path]) => path.endsWith('.cover'))
        .map(([path, written]) => {
            const { texts, file } = readExample(written.split(/^\/\/=>.*$/m)[0]!, path);
            return { name: path, file, texts };
        });
}
