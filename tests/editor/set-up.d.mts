/** The folder of the workbench that runs with a server. */
export const workbench: string;
/** The folder of the workbench that runs in a browser alone. */
export const webWorkbench: string;
export class CannotSetUp extends Error {}
export function setUp(): { readonly browser: string; readonly neovim: string };
