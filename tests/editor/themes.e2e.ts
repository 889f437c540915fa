import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EditorWindow } from './support/editor-window.js';
import { Workbench } from './support/workbench.js';

// The four kinds of theme. The pictures are to be looked at; what a program can see of them is asserted.

const THEMES = {
    light: 'Default Light Modern',
    dark: 'Default Dark Modern',
    'high contrast': 'Default High Contrast',
    'high contrast light': 'Default High Contrast Light',
};

let workbench: Workbench;
beforeAll(async () => {
    workbench = await Workbench.start();
});
afterAll(() => workbench.stop());

describe.each(Object.entries(THEMES))('in a %s theme', (name, theme) => {
    it('words, names, figures and texts can be told apart and read', async () => {
        workbench.set({ 'workbench.colorTheme': theme });
        const window = await EditorWindow.open(workbench.address(workbench.folder()));
        try {
            await window.openFile('supper.cover');
            await window.ready();
            await window.replace('soup-spoon', 'soup-spon');
            await window.waitForUnderlined((all) => all.length > 0);
            const colours = await window.until(
                'The colours of the words',
                () =>
                    Promise.all(
                        ['course', 'smoked-beet', '20', '"Smoked beet and curd"'].map((words) =>
                            window.colourOf(words),
                        ),
                    ),
                (all) => new Set(all.map(({ ink }) => ink)).size >= 3,
            );
            await window.picture(`theme, ${name}`);
            for (const { contrast } of colours) {
                expect(contrast).toBeGreaterThan(3.9);
            }
        } finally {
            await window.close();
        }
    });
});
