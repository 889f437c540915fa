#!/usr/bin/env node
'use strict';
const [flag, ...more] = process.argv.slice(2);
if ((flag === '--version' || flag === '-V') && more.length === 0) {
    // Other programs ask often: answered before anything is loaded.
    require('node:fs').writeSync(1, `${require('../package.json').version}\n`);
} else {
    const { main } = require('./bundle.cjs').loadBundle('main.cjs');
    // Everything has been written when it is done (`src/output.ts`): what Node would still tidy up is not worth the wait.
    main(process.argv).then(() => process.exit());
}
