'use strict';
// Runs the bundles once and keeps the code that V8 compiled for it, for `bin/bundle.cjs` to start from.
// Started by the build in a process of its own, whose output nobody reads.
const { writeFileSync } = require('node:fs');
const { join } = require('node:path');
const { codePath, loadBundle } = require('../bin/bundle.cjs');

const here = join(__dirname, '..');
const plan = join(here, 'starter', 'first-dinner.cover');
// Guests, room and team: everything that is worked out of a plan.
const supper = join(here, '..', '..', 'examples', 'saltmarsh-hall', 'lantern-supper.cover');
const scripts = new Map();

async function run() {
    const { main } = loadBundle('main.cjs', (name, script) => scripts.set(name, script));
    for (const args of [
        ['check', plan],
        ['check', join(__dirname, 'unreadable.cover')],
        ['compile', plan],
        ['check', supper],
        ['compile', supper],
        ['check', join(here, 'starter')],
        ['explain', 'three-per-side'],
        ['draw', supper],
    ]) {
        await main([process.execPath, 'underliner', ...args]);
    }
    for (const [name, script] of scripts) {
        writeFileSync(codePath(name), script.createCachedData());
    }
    process.exitCode = 0;
}

run();
