import { Uri, type Webview } from 'vscode';

/** Where a page may take scripts and styles from. */
export function roots(extension: Uri): Uri[] {
    return [Uri.joinPath(extension, 'dist'), Uri.joinPath(extension, 'media', 'panels')];
}

/** The page of a panel before it has its content: one script, one style, nothing else and nothing from elsewhere. @param words shown meanwhile */
export function shell(webview: Webview, extension: Uri, title: string, words: string): string {
    const nonce = [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16)).join('');
    const [script, style] = [
        webview.asWebviewUri(Uri.joinPath(extension, 'dist', 'panel.js')).toString(),
        webview.asWebviewUri(Uri.joinPath(extension, 'media', 'panels', 'panel.css')).toString(),
    ];
    const policy = `default-src 'none'; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'; base-uri 'none'; form-action 'none'`;
    return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<link rel="stylesheet" href="${style}">
</head>
<body>
<p id="silence" class="stale" role="status"></p>
<main id="page"><p class="missing">${words}</p></main>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}
