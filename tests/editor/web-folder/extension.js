// A folder in memory, filled from what the test serves beside this extension.
const vscode = require('vscode');

exports.activate = async (context) => {
    const answer = await fetch(vscode.Uri.joinPath(context.extensionUri, 'files.json').toString(true));
    const files = new Map(
        Object.entries(await answer.json()).map(([path, text]) => [path, new TextEncoder().encode(text)]),
    );
    const changes = new vscode.EventEmitter();
    const absent = (uri) => vscode.FileSystemError.FileNotFound(uri);
    const isFolder = (path) => path === '/' || [...files.keys()].some((each) => each.startsWith(`${path}/`));
    const provider = {
        onDidChangeFile: changes.event,
        watch: () => new vscode.Disposable(() => undefined),
        stat(uri) {
            const bytes = files.get(uri.path);
            if (bytes) {
                return { type: vscode.FileType.File, ctime: 0, mtime: Date.now(), size: bytes.length };
            }
            if (isFolder(uri.path)) {
                return { type: vscode.FileType.Directory, ctime: 0, mtime: 0, size: 0 };
            }
            throw absent(uri);
        },
        readDirectory(uri) {
            const within = uri.path === '/' ? '/' : `${uri.path}/`;
            const inside = [...files.keys()]
                .filter((path) => path.startsWith(within))
                .map((path) => path.slice(within.length));
            return [...new Set(inside.map((path) => path.split('/')[0]))].map((name) => [
                name,
                files.has(within + name) ? vscode.FileType.File : vscode.FileType.Directory,
            ]);
        },
        readFile(uri) {
            const bytes = files.get(uri.path);
            if (!bytes) {
                throw absent(uri);
            }
            return bytes;
        },
        writeFile(uri, bytes) {
            const type = files.has(uri.path) ? vscode.FileChangeType.Changed : vscode.FileChangeType.Created;
            files.set(uri.path, bytes);
            changes.fire([{ type, uri }]);
        },
        delete(uri) {
            files.delete(uri.path);
            changes.fire([{ type: vscode.FileChangeType.Deleted, uri }]);
        },
        rename(from, to) {
            files.set(to.path, files.get(from.path));
            files.delete(from.path);
        },
        createDirectory: () => undefined,
    };
    context.subscriptions.push(vscode.workspace.registerFileSystemProvider('hall', provider));
};
