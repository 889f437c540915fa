import { readFileSync } from 'node:fs';
import type { FrameLocator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faintWords, smallestWords } from './support/in-panel.mjs';
import { EditorWindow } from './support/editor-window.js';
import { WebWorkbench } from './support/web-workbench.js';

// The extension in an editor without a machine behind it: the server is a worker, and the folder lies in no disk.

const ROOM_AND_TEAM = `
room "Long gallery" 18 m by 11 m { table T1 to T3: round 60 inch, 8 seats }
team { captain 1  servers 3  runners 1  plating-lines 1 at 12 plates per min }
`;

const SUPPER = readFileSync(new URL('../talk/hall/supper.cover', import.meta.url), 'utf8');
const SOUP_LINE = SUPPER.split('\n').findIndex((line) => line.includes('course soup')) + 1;

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

/** A panel of the plan, opened by its command. */
async function open(command: string, tab: string): Promise<FrameLocator> {
    await window.run(`Underliner: ${command}`);
    await window.page.locator(`.tab.active[aria-label^="${tab}: Quiet supper"]`).waitFor();
    const panel = window.page.frameLocator('iframe.webview.ready:visible').frameLocator('#active-frame');
    await panel.locator('h1', { hasText: 'Quiet supper' }).waitFor();
    return panel;
}

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

    it('draws the laid table, the evening and the pull list, and goes to their lines', async () => {
        await window.openFile('supper.cover');
        await window.press('Control+End');
        await window.page.keyboard.insertText(ROOM_AND_TEAM);
        const table = await open('Show the Laid Table', 'Laid table');
        await table.locator('#step-on').click();
        await table.locator('#step', { hasText: 'Step 2 of 12: Serve Smoked beet' }).waitFor();
        expect(await table.locator('svg [data-piece="vessel-1"] circle').count()).toBeGreaterThan(0);
        await window.picture('web, the laid table');
        const evening = await open('Show the Evening', 'Evening');
        await evening.locator('#size-fit').click();
        await evening.locator('.whole svg [data-lane="server 3"] rect').first().waitFor();
        expect(await evening.locator('.whole svg').evaluate(smallestWords)).toBeGreaterThanOrEqual(11);
        await window.picture('web, the evening');
        await evening.locator('svg [data-lane][data-course="1"]').first().click();
        await window.page.locator('#status\\.editor\\.selection', { hasText: `Ln ${SOUP_LINE}` }).waitFor();
        const pull = await open('Show the Pull List', 'Pull list');
        expect(await pull.locator('tbody tr').count()).toBeGreaterThan(10);
        expect(await pull.locator('body').evaluate(faintWords)).toEqual([]);
        await window.picture('web, the pull list');
    });
});
