// The extension's list of blocks to fill in: those that completion offers. None has a prefix, so the editor lists them where
// a person asks for its snippets, and leaves it to the server to offer each where the language lets it stand.
import { loadSource } from './load-source.mjs';

export const snippets = {
    name: 'snippets',
    async outputs() {
        const { BLOCK_SNIPPETS } = await loadSource('packages/language/src/editor/block-snippets.ts');
        const listed = BLOCK_SNIPPETS.map(({ label, about, body }) => [
            label,
            { description: about, body: body.split('\n') },
        ]);
        const text = `${JSON.stringify(Object.fromEntries(listed), undefined, 4)}\n`;
        return [{ path: 'packages/extension/snippets/cover.json', text, isCommitted: false }];
    },
};
