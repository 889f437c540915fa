// Makes a clone ready to run: installs when the lockfile has changed, builds when a source has changed.
// Nothing to do takes a few milliseconds. Node's own modules only, for it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../', import.meta.url));
const stamps = join(root, 'node_modules', '.underliner');

const installInputs = ['package-lock.json', '.npmrc'];
const buildInputs = [
    'package.json',
    'package-lock.json',
    'langium-config.json',
    'packages/language/package.json',
    'packages/language/build.mjs',
    'packages/language/src',
    'packages/language/tools',
    'packages/cli/package.json',
    'packages/cli/build.mjs',
    'packages/cli/src',
    'packages/cli/bin',
    'packages/cli/tools',
    'packages/cli/starter',
    'packages/extension/package.json',
    'packages/extension/build.mjs',
    'packages/extension/src',
    'packages/language/schema',
    'examples/embedding',
];
const buildOutputs = [
    'packages/language/src/grammar/generated/ast.ts',
    'packages/extension/syntaxes/cover.tmLanguage.json',
    'packages/language/dist/index.js',
    'packages/cli/dist/main.cjs',
    'packages/extension/dist/server.js',
];

/** The files at or under `path`, in a fixed order, without what the build itself writes and without tests. */
function* filesUnder(path) {
    for (const entry of readdirSync(join(root, path), { withFileTypes: true }).sort((a, b) =>
        a.name < b.name ? -1 : 1,
    )) {
        const inner = `${path}/${entry.name}`;
        if (entry.isDirectory()) {
            if (entry.name !== 'generated') {
                yield* filesUnder(inner);
            }
        } else if (!entry.name.endsWith('.test.ts')) {
            yield inner;
        }
    }
}

function fingerprint(inputs) {
    const hash = createHash('sha256').update(`${process.version} ${process.platform} ${process.arch}\n`);
    for (const input of inputs) {
        const isFile = /\.[a-z]+$/.test(input);
        for (const file of isFile ? [input] : filesUnder(input)) {
            hash.update(`${file}\n`).update(readFileSync(join(root, file)));
        }
    }
    return hash.digest('hex');
}

function isCurrent(stamp, print) {
    const path = join(stamps, stamp);
    return existsSync(path) && readFileSync(path, 'utf8') === print;
}

function run(title, args) {
    console.log(title);
    const { status, error, stderr } = spawnSync('npm', args, {
        cwd: root,
        stdio: ['inherit', 'inherit', 'pipe'],
        encoding: 'utf8',
        shell: process.platform === 'win32',
    });
    process.stderr.write(stderr ?? '');
    if (error !== undefined) {
        console.error(`npm could not be started: ${error.message}`);
    }
    if (status !== 0) {
        process.exit(status ?? 1);
    }
    // A newer npm may warn of things nobody knows yet; on the build server nothing may warn.
    if (process.env.CI && /^npm (warn|WARN)/m.test(stderr ?? '')) {
        console.error('The install warned; see above.');
        process.exit(1);
    }
}

function record(stamp, print) {
    mkdirSync(stamps, { recursive: true });
    writeFileSync(join(stamps, stamp), print);
}

// Fingerprints are taken before the work: a file that is edited meanwhile makes the next run work again.
const lockfile = fingerprint(installInputs);
if (!isCurrent('install.stamp', lockfile)) {
    run('Installing the packages of the lockfile …', ['ci']);
    record('install.stamp', lockfile);
}
const sources = fingerprint(buildInputs);
if (!isCurrent('build.stamp', sources) || !buildOutputs.every((path) => existsSync(join(root, path)))) {
    run('Building …', ['run', '--silent', 'build']);
    record('build.stamp', sources);
}
