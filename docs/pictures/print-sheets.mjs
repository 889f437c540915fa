// Makes docs/pictures/sheets: every page of the lantern supper's PDF sheets, without colour, small enough for arm's length.
// Wants pdftoppm and mogrify (Debian's packages poppler-utils and imagemagick) and a built command line: `npm run build`, then
// `node docs/pictures/print-sheets.mjs`. The same plan gives the same PDF; the dots are those of the poppler at hand.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const pictures = fileURLToPath(new URL('sheets/', import.meta.url));
const supper = 'examples/saltmarsh-hall/lantern-supper.cover';

/** On both papers what has to fit on one page; the others where the house is, and one server for all. */
const PRINTED = [
    { paper: 'a4', only: 'captain,menu-card', event: supper },
    { paper: 'letter', only: 'captain,server,kitchen,steward,bar,guide,menu-card,seat-list', event: supper },
    { paper: 'letter', only: 'running-late', event: supper, more: ['--at', '20:15', '--done', 'soup'] },
    { paper: 'letter', only: 'place-cards', event: 'examples/saltmarsh-hall/table-of-eight.cover', more: ['--names'] },
];

function run(command, args) {
    const { status, error } = spawnSync(command, args, { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
    if (status !== 0) {
        throw new Error(`${command} did not work: ${error?.message ?? `exit ${status}`}`);
    }
}

rmSync(pictures, { recursive: true, force: true });
mkdirSync(pictures, { recursive: true });
for (const { paper, only, event, more = [] } of PRINTED) {
    const folder = mkdtempSync(join(tmpdir(), 'sheets-'));
    const options = ['--pdf', '--paper', paper, '--only', only, '-o', folder, ...more];
    run(process.execPath, ['packages/cli/bin/underliner.cjs', 'sheets', event, ...options]);
    for (const file of readdirSync(folder).filter((name) => /^(?!server-[^3]).*\.pdf$/.test(name))) {
        const name = file.replace(/\.pdf$/, '');
        run('pdftoppm', ['-r', '72', '-gray', '-png', join(folder, file), join(pictures, `${name}-${paper}`)]);
    }
    rmSync(folder, { recursive: true, force: true });
}
// 16 greys do, and are a third as large.
const all = readdirSync(pictures).map((name) => join(pictures, name));
run('mogrify', ['-strip', '-define', 'png:exclude-chunks=date,time', '-colors', '16', ...all]);
console.log(readdirSync(pictures).sort().join('\n'));
