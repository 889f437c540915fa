// The main job on a real event: check it, compile it, print every sheet, say where all of it was written.
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../', import.meta.url));
const event = 'examples/saltmarsh-hall/lantern-supper.cover';
const plan = '.demo/lantern-supper.plan.json';
const sheets = '.demo/sheets';

function underliner(...args) {
    console.log(`$ underliner ${args.join(' ')}`);
    const command = 'packages/cli/bin/underliner.cjs';
    const { status } = spawnSync(process.execPath, [command, ...args], { cwd: root, stdio: 'inherit' });
    if (status !== 0) {
        process.exit(status ?? 1);
    }
}

mkdirSync(new URL('../.demo', import.meta.url), { recursive: true });
underliner('check', event);
underliner('compile', event, '-o', plan);
underliner('sheets', event, '--pdf', '-o', sheets);
// And the card for an evening that runs late.
underliner('sheets', event, '--at', '20:15', '--done', 'soup', '--pdf', '-o', sheets);
console.log(`The service plan is in ${plan}, what people carry in ${sheets}`);
