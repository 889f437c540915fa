// Bundles the command line, with the language and every package it needs, into a few files that start fast.
// CommonJS, because only a CommonJS script can be given a V8 code cache on Node 20.
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import {
    asCommonJs,
    clocksOnDemand,
    cupboardBeside,
    frameworkOnDemand,
    noChildProcess,
    noExamples,
    noServer,
    noStandardFonts,
    otherBundlesOnDemand,
    printingOnDemand,
    restOfTheProgram,
} from './tools/bundle-parts.mjs';

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

rmSync(new URL('dist', import.meta.url), { recursive: true, force: true });
await build({
    ...common,
    entryPoints: { framework: '../language/src/grammar/parse.ts' },
    // The names of classes and functions are looked up by the framework.
    keepNames: true,
});
await build({ ...common, entryPoints: { clocks: '../language/src/service/clock/zone-offsets.ts' } });
const onDemand = [
    cupboardBeside,
    noServer,
    clocksOnDemand,
    frameworkOnDemand,
    printingOnDemand,
    noChildProcess,
    asCommonJs,
];
const { metafile } = await build({
    ...common,
    metafile: true,
    entryPoints: { main: 'src/main.ts', check: 'src/check.ts', compile: 'src/compile.ts', folders: 'src/folders.ts' },
    external: ['./*.cjs'],
    plugins: [otherBundlesOnDemand, noExamples, ...onDemand],
});
// Of the files that the bundles before ask for.
await build({
    ...common,
    entryPoints: { rest: 'rest' },
    external: ['./*.cjs'],
    plugins: [restOfTheProgram, ...onDemand],
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
const dist = new URL('dist/', import.meta.url);
for (const name of readdirSync(dist).filter((name) => name.endsWith('.cjs'))) {
    const path = new URL(name, dist);
    const escaped = readFileSync(path, 'utf8').replaceAll(
        /[^\0-\x7F]/g,
        (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
    );
    writeFileSync(path, escaped);
}

const slow = Object.values(metafile.outputs)
    .flatMap(({ inputs }) => Object.entries(inputs))
    .filter(
        ([path, { bytesInOutput }]) =>
            bytesInOutput > 0 &&
            /node_modules\/(langium|chevrotain|vscode-|temporal-|ical-generator|papaparse|hast|chokidar|pdfkit|fontkit|@resvg)/.test(
                path,
            ),
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
