import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EditorWindow } from './support/editor-window.js';
import { WebWorkbench } from './support/web-workbench.js';

// The extension in an editor without a machine behind it: the server is a worker, and the folder lies in no disk.

let workbench: WebWorkbench;
let window: EditorWindow;
beforeAll(async () => {
    workbench = await WebWorkbench.start();
    window = await EditorWindow.open(workbench.address);
});
afterAll(async () => {
    await window?.picture('web, at the end');
    await window?.close();
    await workbench.stop();
});

describe('in the browser’s worker', () => {
    it('finds, mends and compiles, with the files that the plan uses', async () => {
        await window.openFile('supper.cover');
        await window.ready();
        expect(await window.underlined()).toEqual([]);
        await window.replace('soup-spoon', 'soup-spon');
        await window.waitForUnderlined((all) => all.some(({ words }) => words === 'soup-spon'));
        await window.picture('web');
        await window.fixes();
        await window.choose('Write `soup-spoon`');
        await window.waitForUnderlined((all) => all.length === 0);
        await window.hover('smoked-beet', 'A sort of appetizer');
        await window.press('Escape');
        await window.run('Underliner: Compile the Service Plan');
        await window.notice('The service plan is in supper.plan.json.').waitFor();
        await window.openFile('supper.plan.json');
        await expect.poll(() => window.text()).toContain('"title": "Quiet supper"');
    });
});
