// Packs the built extension as a person installs it: packages/extension/underliner.vsix.
import { fileURLToPath } from 'node:url';
import { createVSIX } from '@vscode/vsce';

await createVSIX({
    cwd: fileURLToPath(new URL('.', import.meta.url)),
    packagePath: fileURLToPath(new URL('underliner.vsix', import.meta.url)),
    // All that is needed is in the bundles.
    dependencies: false,
    allowMissingRepository: true,
    // Its pictures are in the package.
    rewriteRelativeLinks: false,
});
