import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { EditorWindow } from './support/editor-window.js';
import { Workbench } from './support/workbench.js';

// What the extension is opened on, how it wakes, and what becomes of a chef when the language server breaks.

let workbench: Workbench;
let window: EditorWindow | undefined;
beforeAll(async () => {
    workbench = await Workbench.start();
});
afterAll(() => workbench.stop());
afterEach(async ({ task }) => {
    await window?.picture(`workspaces, ${task.name}`);
    await window?.close();
    window = undefined;
});

async function openSupper(address: string): Promise<EditorWindow> {
    window = await EditorWindow.open(address);
    await window.openFile('supper.cover');
    await window.ready();
    return window;
}

describe('the extension', () => {
    it('sleeps until a plan is opened, and is then woken by its language', async () => {
        const folder = workbench.folder();
        writeFileSync(join(folder, 'notes.txt'), 'Call the florist.\n');
        window = await EditorWindow.open(workbench.address(folder));
        await window.openFile('notes.txt');
        await window.run('Developer: Show Running Extensions');
        const entries = window.page.locator('.runtime-extensions-editor .monaco-list-row');
        await entries.first().waitFor();
        const names = () => entries.allInnerTexts();
        expect((await names()).filter((name) => name.includes('Underliner'))).toEqual([]);
        expect(workbench.servers()).toEqual([]);
        await window.openFile('supper.cover');
        await window.ready();
        await window.run('Developer: Show Running Extensions');
        const woken = await window.until('The extensions that run', names, (all) =>
            all.some((name) => /Underliner[\s\S]*\d+ms/.test(name)),
        );
        // Told, not asserted: a machine may be slow.
        console.info(`Woken: ${woken.find((name) => name.includes('Underliner'))!.replace(/\s+/g, ' ')}`);
    });

    it('serves several folders, each with files of its own', async () => {
        const [one, other] = [workbench.folder(), workbench.folder()];
        const house = join(other, 'house.cover');
        writeFileSync(house, readFileSync(house, 'utf8').replace('limit: 3', 'limit: 1'));
        window = await EditorWindow.open(workbench.addressOf([one, other]));
        const shown = window;
        await shown.run('File: Open File...');
        await shown.path(join(one, 'supper.cover'));
        await shown.ready();
        // The other folder's plan breaks the custom of the other folder's house; this one's does not.
        const found = await shown.problems((rows) => rows.some((row) => row.includes('this house lays at most 1')));
        expect(found.filter((row) => /^\d+ problem/.test(row))).toHaveLength(1);
        expect(await shown.underlined()).toEqual([]);
    });

    it('starts a server that broke again, and after the fifth time says so once, with a way to the log', async () => {
        const shown = await openSupper(workbench.address(workbench.folder()));
        let last = 0;
        const oneMore = () =>
            shown.until(
                'The language server',
                () => Promise.resolve(workbench.servers()),
                ([id]) => id !== undefined && id !== last,
            );
        for (let crash = 1; crash <= 5; crash++) {
            [last] = (await oneMore()) as [number];
            if (crash > 1) {
                // It works again: what is typed is found.
                await shown.replace('soup-spoon', 'soup-spon');
                await shown.waitForUnderlined((all) => all.some(({ words }) => words === 'soup-spon'));
                await shown.replace('soup-spon', 'soup-spoon');
                await shown.waitForUnderlined((all) => all.length === 0);
            }
            process.kill(last, 'SIGKILL');
        }
        const notice = shown.notice('Underliner stopped working several times and was not started again.');
        await notice.waitFor();
        expect(await shown.page.locator('.notifications-toasts .notification-list-item').count()).toBe(1);
        expect(workbench.servers()).toEqual([]);
        await shown.picture('a server that broke too often');
        await notice.getByText('Show the Log', { exact: true }).click();
        await shown.page.locator('.output-view').waitFor();
        await shown.run('Underliner: Restart the Language Server');
        await oneMore();
    });
});
