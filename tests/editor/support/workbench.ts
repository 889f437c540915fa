import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import {
    cpSync,
    existsSync,
    mkdirSync,
    mkdtempSync,
    readdirSync,
    readFileSync,
    realpathSync,
    rmSync,
    writeFileSync,
} from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { workbench } from '../set-up.mjs';

const entry = join(workbench, 'out', 'node', 'entry.js');
const packed = fileURLToPath(new URL('../../../packages/extension/underliner.vsix', import.meta.url));
const hall = fileURLToPath(new URL('../../talk/hall', import.meta.url));

/** What would get in the way of a test, or ask the network. */
const QUIET = {
    // A person who saves knows what is saved.
    'files.autoSave': 'off',
    'extensions.autoCheckUpdates': false,
    'extensions.autoUpdate': false,
    'workbench.enableExperiments': false,
    'workbench.startupEditor': 'none',
    'workbench.tips.enabled': false,
    'telemetry.telemetryLevel': 'off',
    'editor.accessibilitySupport': 'off',
    'editor.cursorBlinking': 'solid',
    'editor.minimap.enabled': false,
    'editor.fontFamily': 'monospace',
    'window.commandCenter': false,
};

/** The editor with the packed extension installed as a person installs it, and a folder of plans to open. */
export class Workbench {
    private constructor(
        private readonly process: ChildProcess,
        private readonly home: string,
        readonly port: number,
    ) {}
    private folders = 0;

    /** @param settings of the user, beyond those that keep it quiet */
    static async start(settings: Readonly<Record<string, unknown>> = {}, asksForTrust = false): Promise<Workbench> {
        const home = realpathSync(mkdtempSync(join(tmpdir(), 'underliner-editor-')));
        const user = join(home, 'data', 'User');
        mkdirSync(user, { recursive: true });
        writeSettings(home, settings);
        const env = installInto(home);
        const port = await freePort();
        const trust = asksForTrust ? [] : ['--disable-workspace-trust'];
        const serve = ['--bind-addr', `127.0.0.1:${port}`, '--disable-telemetry', '--disable-update-check', ...trust];
        const server = spawn(process.execPath, [entry, ...places(home), ...serve], { env, stdio: 'pipe' });
        await said(server, 'HTTP server listening');
        return new Workbench(server, home, port);
    }

    /** A copy of the plans that the tests speak of, at a new place: the editor brings back what was not saved. */
    folder(): string {
        const path = join(this.home, `evening-${++this.folders}`, 'hall');
        cpSync(hall, path, { recursive: true });
        return path;
    }

    /** A folder in which nothing is yet. */
    emptyFolder(): string {
        const path = join(this.home, `evening-${++this.folders}`, 'hall');
        mkdirSync(path, { recursive: true });
        return path;
    }

    /** Changes the user's settings. */
    set(settings: Readonly<Record<string, unknown>>): void {
        writeSettings(this.home, settings);
    }

    /** Writes a folder's own settings. */
    setFolder(folder: string, settings: Readonly<Record<string, unknown>>): void {
        mkdirSync(join(folder, '.vscode'), { recursive: true });
        writeFileSync(join(folder, '.vscode', 'settings.json'), JSON.stringify(settings));
    }

    /** The editor's address with a folder opened. */
    address(folder: string): string {
        return `http://127.0.0.1:${this.port}/?folder=${encodeURIComponent(folder)}`;
    }

    /** The editor's address with several folders opened, as a workspace file lists them. */
    addressOf(folders: readonly string[]): string {
        const path = join(this.home, `several-${++this.folders}.code-workspace`);
        writeFileSync(path, JSON.stringify({ folders: folders.map((folder) => ({ path: folder })) }));
        return `http://127.0.0.1:${this.port}/?workspace=${encodeURIComponent(path)}`;
    }

    /** The language servers that this editor runs, by their process ids. */
    servers(): readonly number[] {
        const program = join(this.home, 'extensions');
        return readdirSync('/proc')
            .map(Number)
            .filter((id) => id > 0)
            .filter((id) => {
                const words = commandOf(id);
                return words.some((word) => word.startsWith(program) && word.endsWith('desktop-server.js'));
            });
    }

    async stop(): Promise<void> {
        const left = new Promise((resolve) => this.process.once('exit', resolve));
        this.process.kill();
        await left;
        if (existsSync(this.home)) {
            rmSync(this.home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
        }
    }
}

/** Installs the packed extension as a person does. @returns the environment to start the editor in */
function installInto(home: string): NodeJS.ProcessEnv {
    mkdirSync(join(home, 'data'), { recursive: true });
    mkdirSync(join(home, 'extensions'));
    writeFileSync(join(home, 'config.yaml'), '');
    // No gallery: nothing is asked of the network.
    const env = { ...process.env, EXTENSIONS_GALLERY: '{"serviceUrl":""}' };
    const args = [entry, ...places(home), '--install-extension', packed];
    const { status, stdout, stderr } = spawnSync(process.execPath, args, { env, encoding: 'utf8' });
    if (status !== 0 || !stdout.includes('successfully installed')) {
        throw new Error(`The packed extension was not installed: ${stdout}${stderr}`);
    }
    return env;
}

function places(home: string): readonly string[] {
    return [
        ...['--auth', 'none', '--config', join(home, 'config.yaml')],
        ...['--user-data-dir', join(home, 'data'), '--extensions-dir', join(home, 'extensions')],
    ];
}

/** The packed extension as it lies on a disk once installed. */
export class Unpacked {
    private constructor(
        private readonly home: string,
        readonly extension: string,
    ) {}

    static make(): Unpacked {
        const home = realpathSync(mkdtempSync(join(tmpdir(), 'underliner-unpacked-')));
        installInto(home);
        const folder = readdirSync(join(home, 'extensions')).find((name) => name.startsWith('underliner.'))!;
        return new Unpacked(home, join(home, 'extensions', folder));
    }

    remove(): void {
        rmSync(this.home, { recursive: true, force: true });
    }
}

function writeSettings(home: string, settings: Readonly<Record<string, unknown>>): void {
    const path = join(home, 'data', 'User', 'settings.json');
    writeFileSync(path, JSON.stringify({ ...QUIET, ...settings }));
}

/** The words that a process was started with; none of one that has left. */
function commandOf(id: number): readonly string[] {
    try {
        return readFileSync(`/proc/${id}/cmdline`, 'utf8').split('\0');
    } catch {
        return [];
    }
}

export function freePort(): Promise<number> {
    return new Promise((resolve, reject) => {
        const server = createServer();
        server.once('error', reject);
        server.listen(0, '127.0.0.1', () => {
            const { port } = server.address() as AddressInfo;
            server.close(() => resolve(port));
        });
    });
}

function said(server: ChildProcess, words: string): Promise<void> {
    return new Promise((resolve, reject) => {
        let log = '';
        const hear = (chunk: Buffer): void => {
            log += chunk.toString();
            if (log.includes(words)) {
                resolve();
            }
        };
        server.stdout!.on('data', hear);
        server.stderr!.on('data', hear);
        server.once('exit', (code) => reject(new Error(`The editor left with exit code ${code}: ${log}`)));
    });
}
