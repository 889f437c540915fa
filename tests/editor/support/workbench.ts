import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
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
        mkdirSync(join(home, 'extensions'));
        writeSettings(home, settings);
        const common = [
            ...['--auth', 'none', '--config', join(home, 'config.yaml')],
            ...['--user-data-dir', join(home, 'data'), '--extensions-dir', join(home, 'extensions')],
        ];
        writeFileSync(join(home, 'config.yaml'), '');
        // No gallery: nothing is asked of the network.
        const env = { ...process.env, EXTENSIONS_GALLERY: '{"serviceUrl":""}' };
        const installed = spawnSync(process.execPath, [entry, ...common, '--install-extension', packed], {
            env,
            encoding: 'utf8',
        });
        if (installed.status !== 0 || !installed.stdout.includes('successfully installed')) {
            throw new Error(`The packed extension was not installed: ${installed.stdout}${installed.stderr}`);
        }
        const port = await freePort();
        const trust = asksForTrust ? [] : ['--disable-workspace-trust'];
        const serve = ['--bind-addr', `127.0.0.1:${port}`, '--disable-telemetry', '--disable-update-check', ...trust];
        const server = spawn(process.execPath, [entry, ...common, ...serve], { env, stdio: 'pipe' });
        await said(server, 'HTTP server listening');
        return new Workbench(server, home, port);
    }

    /** A copy of the plans that the tests speak of, at a new place: the editor brings back what was not saved. */
    folder(): string {
        const path = join(this.home, `evening-${++this.folders}`, 'hall');
        cpSync(hall, path, { recursive: true });
        return path;
    }

    /** Changes the user's settings. */
    set(settings: Readonly<Record<string, unknown>>): void {
        writeSettings(this.home, settings);
    }

    /** The editor's address with a folder opened. */
    address(folder: string): string {
        return `http://127.0.0.1:${this.port}/?folder=${encodeURIComponent(folder)}`;
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

function writeSettings(home: string, settings: Readonly<Record<string, unknown>>): void {
    const path = join(home, 'data', 'User', 'settings.json');
    writeFileSync(path, JSON.stringify({ ...QUIET, ...settings }));
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
