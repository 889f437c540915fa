import { builtinModules } from 'node:module';
import { fileURLToPath } from 'node:url';

// Who may import whom. Every allowed edge stands once in `mayImport`; any other import is a failure.

const source = '^packages/language/src';
const inPackage = (name) => `(^|/)node_modules/(@types/)?${name}/`;
const folder = (name) => `${source}/${name}/`;

/** A layer is a set of modules, given as a regular expression over paths from the root. */
const layers = {
    // Plain values and pure functions over them: run anywhere, know no editor and no syntax.
    plan: `${source}/plan/(?!read)`,
    service: folder('service'),
    rules: folder('rules'),
    output: folder('output'),
    cupboard: folder('cupboard'),
    // The language: text to syntax tree, and `plan/read*.ts` from syntax tree to plain values.
    grammar: folder('grammar'),
    reader: `${source}/plan/read`,
    // What the engine that runs all this has compiled: knows nothing of the language.
    compiled: `${source}/keep-compiled\\.ts$`,
    // The entry point of the core, with what joins the layers, straight in src/.
    core: `${source}/(?!node)[^/]+\\.ts$`,
    editor: folder('editor'),
    nodeFiles: `${source}/node[^/]*\\.ts$`,
    // What stands on the language package sees its entry points only.
    entry: `${source}/(index|editor/index|node)\\.ts$`,
    cli: '^packages/cli/src/',
    extension: '^packages/extension/src/',

    // Values that are worked out again when what they were worked out from is another.
    cells: inPackage('@preact/signals-core'),
    units: inPackage('(convert|fraction\\.js)'),
    calendar: inPackage('temporal-[^/]+'),
    geometry: inPackage('sat'),
    nearestName: inPackage('fastest-levenshtein'),
    integerPrograms: inPackage('yalps'),
    chance: inPackage('pure-rand'),
    markup: inPackage('(hastscript|hast|hast-util-to-html)'),
    clockTicks: inPackage('(d3-array|d3-time)'),
    tables: inPackage('papaparse'),
    calendars: inPackage('(ical-generator|uuid)'),
    frontMatter: inPackage('yaml'),
    framework: inPackage('(langium|chevrotain|vscode-uri)'),
    protocol: inPackage('vscode-[^/]+'),
    node: `^(node:.+|${builtinModules.join('|')})$`,
    cliPackages: inPackage(
        '(chokidar|commander|picocolors|diff|tinyglobby|ignore|sarif|pdfkit|@resvg/resvg-wasm|hast|hast-util-from-html)',
    ),
    panelPackages: inPackage('morphdom'),
    vscode: '^vscode$|' + inPackage('(vscode|vscode-languageclient)'),
};

const mayImport = {
    plan: ['plan', 'units', 'calendar', 'cells'],
    service: ['service', 'plan', 'compiled', 'units', 'calendar', 'geometry', 'integerPrograms', 'chance'],
    rules: ['rules', 'service', 'plan', 'units', 'nearestName'],
    output: [
        ...['output', 'rules', 'service', 'plan', 'units', 'calendar'],
        ...['geometry', 'markup', 'clockTicks', 'tables', 'calendars'],
    ],
    cupboard: ['cupboard', 'plan'],
    grammar: ['grammar', 'compiled', 'framework', 'nearestName'],
    reader: ['reader', 'plan', 'grammar', 'compiled', 'framework', 'units', 'calendar', 'frontMatter', 'nearestName'],
    core: ['core', 'plan', 'reader', 'service', 'rules', 'output', 'cupboard', 'grammar', 'framework', 'frontMatter'],
    editor: [
        ...['editor', 'core', 'plan', 'reader', 'service', 'rules', 'output', 'cupboard', 'grammar'],
        ...['framework', 'protocol', 'nearestName', 'markup'],
    ],
    nodeFiles: ['nodeFiles', 'core', 'plan', 'node'],
    cli: ['cli', 'entry', 'cliPackages', 'protocol', 'node'],
    extension: ['extension', 'entry', 'vscode', 'protocol', 'panelPackages'],
};

export default {
    allowed: Object.entries(mayImport).flatMap(([from, tos]) =>
        tos.map((to) => ({ from: { path: layers[from] }, to: { path: layers[to] } })),
    ),
    allowedSeverity: 'error',
    forbidden: [
        {
            name: 'no-circle',
            comment: 'Modules that need each other are one module, or share a third. Types may refer to each other.',
            severity: 'error',
            from: {},
            to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
        },
        {
            name: 'no-lost-import',
            comment: 'What is imported must be installed.',
            severity: 'error',
            from: {},
            to: { couldNotResolve: true, pathNot: '^vscode$' },
        },
    ],
    options: {
        // Tests may look anywhere; the tools of a package are not shipped.
        exclude: ['\\.test\\.ts$', '^packages/[^/]+/(?!src(/|$))'],
        doNotFollow: ['node_modules', '/generated/'],
        tsPreCompilationDeps: true,
        tsConfig: { fileName: fileURLToPath(new URL('tsconfig.json', import.meta.url)) },
        enhancedResolveOptions: {
            exportsFields: ['exports'],
            conditionNames: ['underliner-source', 'types', 'import', 'node', 'default'],
            mainFields: ['module', 'main', 'types'],
        },
    },
};
