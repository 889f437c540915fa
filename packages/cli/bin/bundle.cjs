'use strict';
// Loads the program's bundles, each with the code that V8 compiled when the bundle was built. Where the code does not
// fit, because another version of Node runs it, V8 refuses it and compiles anew. Nothing is ever written here.
const { readFileSync } = require('node:fs');
const { createRequire } = require('node:module');
const { join } = require('node:path');
const { Script } = require('node:vm');

const folder = join(__dirname, '..', 'dist');
const loaded = new Map();

/**
 * @param name of a file in dist; a bundle that asks for another with `require('./name')` gets it the same way
 * @param onScript is given the script, for the build to take the compiled code from
 * @returns what the bundle exports
 */
function loadBundle(name, onScript) {
    const known = loaded.get(name);
    if (known !== undefined) {
        return known.exports;
    }
    const path = join(folder, name);
    // ASCII, which reads fastest as Latin-1; the build has put the function around it that Node puts around a module.
    const source = readFileSync(path, 'latin1');
    const script = new Script(source, { filename: path, cachedData: onScript ? undefined : compiledCode(path) });
    onScript?.(name, script);
    const module = { exports: {} };
    loaded.set(name, module);
    const requireOutside = createRequire(path);
    const require = (id) => (id.startsWith('./') ? loadBundle(id.slice(2), onScript) : requireOutside(id));
    script.runInThisContext()(module.exports, require, module, path, folder);
    return module.exports;
}

function compiledCode(path) {
    try {
        return readFileSync(`${path}.code`);
    } catch {
        return undefined;
    }
}

module.exports = { loadBundle };
