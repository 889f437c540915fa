// Bundles the command line, with the language and every package it needs, into a few files that start fast.
// CommonJS, because only a CommonJS script can be given a V8 code cache on Node 20.
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

const common = {
    absWorkingDir: here,
    outdir: 'dist',
    outExtension: { '.js': '.cjs' },
    bundle: true,
    minify: true,
    // The function that Node puts around a module, so that a bundle can be read and run without being copied.
    banner: { js: '(function (exports, require, module, __filename, __dirname) {' },
    footer: { js: '})' },
    format: 'cjs',
    platform: 'node',
    target: 'node20.19',
    mainFields: ['module', 'main'],
    conditions: ['underliner-source'],
    define: { UNDERLINER_VERSION: JSON.stringify(version), 'process.env.NODE_ENV': '"production"' },
    legalComments: 'external',
    logLevel: 'warning',
};

/**
 * The language framework is a file of its own, which is loaded when a text needs it: one in which something can't be
 * read. Texts without such mistakes are read by the plain parser.
 */
const frameworkOnDemand = {
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
const clocksOnDemand = {
    name: 'clocks-on-demand',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /\/zone-offsets\.js$/ }, ({ path }) => ({ path, namespace: 'clocks-on-demand' }));
        onLoad({ filter: /.*/, namespace: 'clocks-on-demand' }, () => ({
            contents: 'export const zoneOffsets = (zone, date) => require("./clocks.cjs").zoneOffsets(zone, date);',
            resolveDir: here,
        }));
    },
};

/** The language server, with the framework and the editor's protocol in it, is a file that `lsp` alone loads. */
const serverOnDemand = {
    name: 'server-on-demand',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^\.\/(lsp|server)\.js$/ }, ({ path, importer }) =>
            // The language server's own file: the sheet of a server is another.
            path === './lsp.js' || /[\\/]editor[\\/]/.test(importer)
                ? { path, namespace: 'server-on-demand' }
                : undefined,
        );
        onLoad({ filter: /lsp/, namespace: 'server-on-demand' }, () => ({
            contents: 'export const runLsp = () => require("./lsp.cjs").runLsp();',
            resolveDir: here,
        }));
        onLoad({ filter: /server/, namespace: 'server-on-demand' }, () => ({
            contents: 'export const startLanguageServer = undefined;',
        }));
    },
};

/** What writes PDF and PNG is large, and only `sheets --pdf` and `draw --png` load it. */
const printingOnDemand = {
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

/** The fonts that a PDF reader brings along: ours are in the document. */
const noStandardFonts = {
    name: 'no-standard-fonts',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^#standard-fonts\// }, ({ path }) => ({ path, namespace: 'left-out' }));
        onLoad({ filter: /.*/, namespace: 'left-out' }, () => ({ contents: 'module.exports = {};' }));
    },
};

/** Starting a process, which the argument library can do and need not, takes 3 ms to load; only `compare` asks git. */
const noChildProcess = {
    name: 'no-child-process',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^(node:)?child_process$/ }, ({ importer }) =>
            /node_modules/.test(importer) ? { path: 'child_process', namespace: 'left-out' } : undefined,
        );
        onLoad({ filter: /.*/, namespace: 'left-out' }, () => ({ contents: 'module.exports = {};' }));
    },
};

/** Their module forms ask for the address of the file they are in, which a CommonJS bundle does not have. */
const asCommonJs = {
    name: 'as-common-js',
    setup({ onResolve, resolve }) {
        onResolve({ filter: /^(tinyglobby|pdfkit)$/ }, ({ kind, path, resolveDir }) =>
            kind === 'require-call' ? undefined : resolve(path, { kind: 'require-call', resolveDir }),
        );
    },
};

rmSync(new URL('dist', import.meta.url), { recursive: true, force: true });
await build({
    ...common,
    entryPoints: { framework: '../language/src/grammar/parse.ts' },
    // The names of classes and functions are looked up by the framework.
    keepNames: true,
});
await build({ ...common, entryPoints: { clocks: '../language/src/service/clock/zone-offsets.ts' } });
const { metafile } = await build({
    ...common,
    metafile: true,
    entryPoints: { main: 'src/main.ts' },
    external: ['./clocks.cjs', './framework.cjs', './lsp.cjs', './pdf.cjs', './png.cjs'],
    plugins: [clocksOnDemand, frameworkOnDemand, serverOnDemand, printingOnDemand, noChildProcess, asCommonJs],
});
await build({
    ...common,
    entryPoints: { lsp: 'src/lsp.ts' },
    // The framework looks names up here too; to keep them beside shorter ones costs a call for each function that is made.
    minify: false,
    minifyWhitespace: true,
    minifySyntax: true,
    plugins: [asCommonJs],
});
await build({
    ...common,
    entryPoints: { pdf: 'src/pdf/sheet-pdf.ts', png: 'src/png.ts' },
    plugins: [asCommonJs, noStandardFonts],
});

// The letters of everything printed, and the rasteriser, lie beside the bundles that read them.
const fonts = new URL('dist/fonts/', import.meta.url);
mkdirSync(fonts);
const { resolve: pathOf } = createRequire(import.meta.url);
const noto = '@expo-google-fonts/noto-sans';
copyFileSync(pathOf(`${noto}/400Regular/NotoSans_400Regular.ttf`), new URL('NotoSans_400Regular.ttf', fonts));
copyFileSync(pathOf(`${noto}/700Bold/NotoSans_700Bold.ttf`), new URL('NotoSans_700Bold.ttf', fonts));
copyFileSync(pathOf(`${noto}/LICENSE_FONT`), new URL('LICENSE', fonts));
copyFileSync(pathOf('@resvg/resvg-wasm/index_bg.wasm'), new URL('dist/resvg.wasm', import.meta.url));

// The bundles are read as bytes of ASCII; regular expressions alone are left as they are written.
for (const name of ['main', 'framework', 'lsp', 'pdf', 'png']) {
    const path = new URL(`dist/${name}.cjs`, import.meta.url);
    const escaped = readFileSync(path, 'utf8').replaceAll(
        /[^\0-\x7F]/g,
        (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
    );
    writeFileSync(path, escaped);
}

const slow = Object.entries(metafile.outputs['dist/main.cjs'].inputs)
    .filter(
        ([path, { bytesInOutput }]) =>
            bytesInOutput > 0 &&
            /node_modules\/(langium|chevrotain|vscode-|temporal-|pdfkit|fontkit|@resvg)/.test(path),
    )
    .map(([path]) => path);
if (slow.length > 0) {
    throw new Error(`Slow to load, and not for \`check\`: ${slow.length} files such as ${slow[0]}.`);
}

const ahead = spawnSync(process.execPath, ['tools/compile-ahead.cjs'], {
    cwd: here,
    stdio: ['ignore', 'ignore', 'inherit'],
});
if (ahead.status !== 0) {
    throw new Error('The compiled code was not kept.');
}
