#!/usr/bin/env node
'use strict';
const [flag, ...more] = process.argv.slice(2);
if ((flag === '--version' || flag === '-V') && more.length === 0) {
    // Other programs ask often: answered before anything is loaded.
    require('node:fs').writeSync(1, `${require('../package.json').version}\n`);
} else {
    require('./bundle.cjs').loadBundle('main.cjs').main(process.argv);
}
