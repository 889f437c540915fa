import { createReadStream, existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { webWorkbench } from '../set-up.mjs';
import { Unpacked } from './workbench.js';

const folderExtension = fileURLToPath(new URL('../web-folder', import.meta.url));
const hall = fileURLToPath(new URL('../../talk/hall', import.meta.url));

const TYPES: Readonly<Record<string, string>> = {
    '.css': 'text/css',
    '.html': 'text/html',
    '.js': 'text/javascript',
    '.json': 'application/json',
    '.svg': 'image/svg+xml',
    '.ttf': 'font/ttf',
    '.wasm': 'application/wasm',
};

/**
 * The editor that runs in the browser alone: files are served from this machine and nothing answers them. The extension
 * comes from its package; the folder lies in the page's memory.
 */
export class WebWorkbench {
    private constructor(
        private readonly server: Server,
        private readonly unpacked: Unpacked,
        readonly address: string,
    ) {}

    static async start(): Promise<WebWorkbench> {
        const unpacked = Unpacked.make();
        const roots: Readonly<Record<string, string>> = {
            '/underliner/': unpacked.extension,
            '/folder/': folderExtension,
            '/': join(webWorkbench, 'dist'),
        };
        const server = createServer((request, response) => {
            const path = decodeURIComponent(new URL(request.url ?? '/', 'http://loopback').pathname);
            const made =
                path === '/' ? page(request.headers.host!) : path === '/folder/files.json' ? hallAsJson() : undefined;
            if (made !== undefined) {
                response.setHeader('Content-Type', path === '/' ? 'text/html' : 'application/json');
                response.end(made);
                return;
            }
            const [prefix, root] = Object.entries(roots).find(([each]) => path.startsWith(each))!;
            const file = join(root, normalize(path.slice(prefix.length)));
            if (!file.startsWith(root) || !existsSync(file) || !statSync(file).isFile()) {
                response.statusCode = 404;
                response.end();
                return;
            }
            response.setHeader('Content-Type', TYPES[extname(file)] ?? 'application/octet-stream');
            createReadStream(file).pipe(response);
        });
        await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
        const { port } = server.address() as AddressInfo;
        // A name of this machine, for an address has no names below it.
        return new WebWorkbench(server, unpacked, `http://workbench.localhost:${port}/`);
    }

    async stop(): Promise<void> {
        this.server.closeAllConnections();
        await new Promise((resolve) => this.server.close(resolve));
        this.unpacked.remove();
    }
}

/** Loads the workbench as its own page does, with two extensions more. */
function page(host: string): string {
    const extension = (path: string) => ({ scheme: 'http', authority: host, path });
    const options = {
        // Each panel's page is of an origin of its own below the workbench's, so that the browser lets it keep its worker.
        webviewEndpoint: `http://{{uuid}}.${host}/out/vs/workbench/contrib/webview/browser/pre/`,
        folderUri: { scheme: 'hall', path: '/hall' },
        additionalBuiltinExtensions: [extension('/underliner'), extension('/folder')],
        configurationDefaults: {
            'workbench.startupEditor': 'none',
            'telemetry.telemetryLevel': 'off',
            'files.autoSave': 'off',
            'editor.minimap.enabled': false,
            'editor.cursorBlinking': 'solid',
            'editor.accessibilitySupport': 'off',
            'security.workspace.trust.enabled': false,
        },
        productConfiguration: { nameShort: 'Web', nameLong: 'Web', enableTelemetry: false },
    };
    return `<!doctype html>
<html>
<head><meta charset="utf-8"><link rel="stylesheet" href="/out/vs/workbench/workbench.web.main.css"></head>
<body>
<script src="/out/vs/loader.js"></script>
<script src="/out/vs/webPackagePaths.js"></script>
<script>
    const origin = location.origin;
    for (const name of Object.keys(self.webPackagePaths)) {
        self.webPackagePaths[name] = origin + '/node_modules/' + name + '/' + self.webPackagePaths[name];
    }
    require.config({ baseUrl: origin + '/out', paths: self.webPackagePaths });
</script>
<script src="/out/vs/workbench/workbench.web.main.nls.js"></script>
<script src="/out/vs/workbench/workbench.web.main.js"></script>
<script>
    require(['vs/workbench/workbench.web.main'], (workbench) => {
        const options = ${JSON.stringify(options)};
        const uri = (parts) => workbench.URI.from(parts);
        const folderUri = uri(options.folderUri);
        workbench.create(document.body, {
            ...options,
            additionalBuiltinExtensions: options.additionalBuiltinExtensions.map(uri),
            workspaceProvider: { workspace: { folderUri }, trusted: true, open: async () => true },
        });
    });
</script>
</body>
</html>`;
}

function hallAsJson(): string {
    const paths = readdirSync(hall, { recursive: true, encoding: 'utf8' }).filter((path) =>
        statSync(join(hall, path)).isFile(),
    );
    const files = paths.map(
        (path) => [`/hall/${path.replaceAll('\\', '/')}`, readFileSync(join(hall, path), 'utf8')] as const,
    );
    return JSON.stringify(Object.fromEntries(files));
}
