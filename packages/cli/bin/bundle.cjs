'use strict';
// Loads the program's bundles, each with the code that V8 compiled when the bundle was built, where it was this very
// version of V8; another one compiles anew. Nothing is ever written here.
const { existsSync, readFileSync } = require('node:fs');
const { createRequire } = require('node:module');
const { join } = require('node:path');
const { Script } = require('node:vm');

const folder = join(__dirname, '..', 'dist');
const loaded = new Map();

/** Where the compiled code of a bundle is kept. */
function codePath(name) {
    return join(folder, `${name}.${process.versions.v8}-${process.arch}.code`);
}

/**
 * Optimizing code takes longer than a short run gains by it, and a long run gains by waiting for what is worth it: a
 * hundred plans are checked in half the time. Code is kept for these flags only, so the build sets them too. The language
 * server runs for hours over few plans: there the engine's own figure is better.
 */
const OPTIMIZE_AFTER = { command: 2_000_000, server: 67_584 };

function optimizeAfter(budget) {
    require('node:v8').setFlagsFromString(`--interrupt-budget=${budget}`);
}

/**
 * @param name of a file in dist; a bundle that asks for another with `require('./name')` gets it the same way
 * @param onScript is given each script, for the build to take the compiled code from
 * @returns what the bundle exports
 */
function loadBundle(name, onScript) {
    const known = loaded.get(name);
    if (known !== undefined) {
        return known.exports;
    }
    const hasCode = onScript === undefined && existsSync(codePath(name));
    if (loaded.size === 0 && (hasCode || onScript !== undefined)) {
        optimizeAfter(OPTIMIZE_AFTER.command);
    } else if (name === 'lsp.cjs') {
        optimizeAfter(OPTIMIZE_AFTER.server);
    }
    const path = join(folder, name);
    // ASCII, which reads fastest as Latin-1; the build has put the function around it that Node puts around a module.
    const source = readFileSync(path, 'latin1');
    const script = new Script(source, {
        filename: path,
        cachedData: hasCode ? readFileSync(codePath(name)) : undefined,
    });
    onScript?.(name, script);
    const module = { exports: {} };
    loaded.set(name, module);
    const requireOutside = createRequire(path);
    const requireHere = (id) => (id.startsWith('./') ? loadBundle(id.slice(2), onScript) : requireOutside(id));
    script.runInThisContext()(module.exports, requireHere, module, path, folder);
    return module.exports;
}

module.exports = { codePath, loadBundle };
