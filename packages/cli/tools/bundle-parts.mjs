// What is cut out of a bundle, and where it goes: each a plugin of the bundler.
import { readFileSync, writeFileSync } from 'node:fs';
import { parse, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const here = fileURLToPath(new URL('..', import.meta.url));

/**
 * The language framework is a file of its own, which is loaded when a text needs it: one in which something can't be
 * read. Texts without such mistakes are read by the plain parser.
 */
export const frameworkOnDemand = {
    name: 'framework-on-demand',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /\/grammar\/parse\.js$|^\.\/parse\.js$/ }, ({ path, importer }) =>
            /[\\/]src[\\/]/.test(importer) ? { path, namespace: 'framework-on-demand' } : undefined,
        );
        onLoad({ filter: /.*/, namespace: 'framework-on-demand' }, () => ({
            contents: 'export const parseText = (text) => require("./framework.cjs").parseText(text);',
            resolveDir: here,
        }));
    },
};

/** The calendar library loads Intl, which is slow: it is a file of its own, for plans whose clocks are put forward or back. */
export const clocksOnDemand = {
    name: 'clocks-on-demand',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /\/zone-offsets\.js$/ }, ({ path }) => ({ path, namespace: 'clocks-on-demand' }));
        onLoad({ filter: /.*/, namespace: 'clocks-on-demand' }, () => ({
            contents: 'export const zoneOffsets = (zone, date) => require("./clocks.cjs").zoneOffsets(zone, date);',
            resolveDir: here,
        }));
    },
};

/** What is asked for by an `import()` and is read on many starts: each a bundle of its own, with all it needs. */
const OWN_BUNDLES = ['check', 'compile', 'folders', 'lsp'];

/** What else is asked for by an `import()`, file by name: together they are the bundle `rest`, and each runs when it is asked for. */
const inRest = new Map();

/** An `import()` leads out of the bundle, so that what most starts do without is neither read nor run. */
export const otherBundlesOnDemand = {
    name: 'other-bundles-on-demand',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^\./ }, ({ kind, path, resolveDir }) => {
            if (kind !== 'dynamic-import') {
                return undefined;
            }
            const file = resolve(resolveDir, path.replace(/\.js$/, '.ts'));
            const { name } = parse(file);
            if (!OWN_BUNDLES.includes(name)) {
                inRest.set(name, file);
            }
            return { path: name, namespace: 'other-bundle' };
        });
        onLoad({ filter: /.*/, namespace: 'other-bundle' }, ({ path: name }) => ({
            contents: OWN_BUNDLES.includes(name)
                ? `module.exports = require("./${name}.cjs");`
                : `module.exports = require("./rest.cjs")["${name}"];`,
            resolveDir: here,
        }));
    },
};

export const restOfTheProgram = {
    name: 'rest-of-the-program',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^rest$/ }, ({ path }) => ({ path, namespace: 'rest-of-the-program' }));
        onLoad({ filter: /.*/, namespace: 'rest-of-the-program' }, () => {
            const parts = [...inRest].map(
                ([name, file]) => `get "${name}"() { return require(${JSON.stringify(file)}); },`,
            );
            return { contents: `module.exports = { ${parts.join(' ')} };`, resolveDir: here };
        });
    },
};

/** The language server comes with the editor's services, which only `lsp` serves. */
export const noServer = {
    name: 'no-server',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^\.\/server\.js$/ }, ({ path, importer }) =>
            // The sheet of a server is another.
            /[\\/]editor[\\/]/.test(importer) ? { path, namespace: 'no-server' } : undefined,
        );
        onLoad({ filter: /.*/, namespace: 'no-server' }, () => ({
            contents: 'export const startLanguageServer = undefined;',
        }));
    },
};

/** What writes PDF and PNG is large, and only `sheets --pdf` and `draw --png` load it. */
export const printingOnDemand = {
    name: 'printing-on-demand',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^\.\/(pdf\/sheet-pdf|png)\.js$/ }, ({ path }) => ({
            path,
            namespace: 'printing-on-demand',
        }));
        onLoad({ filter: /pdf/, namespace: 'printing-on-demand' }, () => ({
            contents: 'export const sheetPdf = (...all) => require("./pdf.cjs").sheetPdf(...all);',
            resolveDir: here,
        }));
        onLoad({ filter: /png/, namespace: 'printing-on-demand' }, () => ({
            contents: 'export const svgPng = (...all) => require("./png.cjs").svgPng(...all);',
            resolveDir: here,
        }));
    },
};

/** Only `explain` and `rules` read the examples of a rule; they are a quarter of what `check` would read. */
export const noExamples = {
    name: 'no-examples',
    setup({ onLoad }) {
        onLoad({ filter: /[\\/]rules[\\/][a-z-]+\.ts$/ }, ({ path }) => ({
            contents: withoutExamples(path, readFileSync(path, 'utf8')),
            loader: 'ts',
        }));
    },
};

/** The text of a rule without the property `examples`. */
function withoutExamples(path, text) {
    const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest);
    const rule = source.statements.find(ts.isExportAssignment)?.expression.arguments?.[0];
    const examples = rule?.properties?.find((property) => property.name?.getText(source) === 'examples');
    return examples ? `${text.slice(0, examples.pos)} examples: undefined${text.slice(examples.end)}` : text;
}

/** What the standard cupboard declares is read beside the bundles: as a text in a program it would be read, compiled and kept as well. */
export const cupboardBeside = {
    name: 'cupboard-beside',
    setup({ onLoad }) {
        onLoad({ filter: /[\\/]cupboard[\\/]generated[\\/]standard\.ts$/ }, ({ path }) => {
            const [index, [, declarations]] = readFileSync(path, 'utf8').matchAll(/^export const \w+ = (.*);$/gm);
            writeFileSync(new URL('../dist/cupboard.txt', import.meta.url), JSON.parse(declarations), 'latin1');
            return {
                contents: `${index[0]}
                    import { readFileSync } from 'node:fs';
                    import { join } from 'node:path';
                    export const standardDeclarations = readFileSync(join(__dirname, 'cupboard.txt'), 'latin1');`,
                resolveDir: here,
            };
        });
    },
};

/** The fonts that a PDF reader brings along: ours are in the document. */
export const noStandardFonts = {
    name: 'no-standard-fonts',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^#standard-fonts\// }, ({ path }) => ({ path, namespace: 'left-out' }));
        onLoad({ filter: /.*/, namespace: 'left-out' }, () => ({ contents: 'module.exports = {};' }));
    },
};

/** Starting a process, which the argument library can do and need not, takes 3 ms to load; only `compare` asks git. */
export const noChildProcess = {
    name: 'no-child-process',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^(node:)?child_process$/ }, ({ importer }) =>
            /node_modules/.test(importer) ? { path: 'child_process', namespace: 'left-out' } : undefined,
        );
        onLoad({ filter: /.*/, namespace: 'left-out' }, () => ({ contents: 'module.exports = {};' }));
    },
};

/** Their module forms ask for the address of the file they are in, which a CommonJS bundle does not have. */
export const asCommonJs = {
    name: 'as-common-js',
    setup({ onResolve, resolve }) {
        onResolve({ filter: /^(tinyglobby|pdfkit)$/ }, ({ kind, path, resolveDir }) =>
            kind === 'require-call' ? undefined : resolve(path, { kind: 'require-call', resolveDir }),
        );
    },
};
