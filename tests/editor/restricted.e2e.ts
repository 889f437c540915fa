import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EditorWindow } from './support/editor-window.js';
import { Workbench } from './support/workbench.js';

// A folder that came from someone else and is not trusted. Nothing of it is run, so everything of it is checked.

let workbench: Workbench;
let folder: string;
let window: EditorWindow;
beforeAll(async () => {
    workbench = await Workbench.start({ 'security.workspace.trust.startupPrompt': 'never' }, true);
    folder = workbench.folder();
    window = await EditorWindow.open(workbench.address(folder));
});
afterAll(async () => {
    await window.close();
    await workbench.stop();
});

describe('in Restricted Mode', () => {
    it('finds, mends and compiles as ever', async () => {
        await window.page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
        await window.openFile('supper.cover');
        await window.ready();
        await window.replace('soup-spoon', 'soup-spon');
        await window.waitForUnderlined((all) => all.some(({ words }) => words === 'soup-spon'));
        await window.picture('restricted mode');
        await window.fixes();
        await window.choose('Write `soup-spoon`');
        await window.waitForUnderlined((all) => all.length === 0);
        await window.run('Underliner: Compile the Service Plan');
        await window.notice('The service plan is in supper.plan.json.').waitFor();
        expect(existsSync(join(folder, 'supper.plan.json'))).toBe(true);
    });
});
