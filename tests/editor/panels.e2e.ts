import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator, Locator } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { EditorWindow } from './support/editor-window.js';
import { faintWords, scrolledAside, smallestWords, widerThanPage } from './support/in-panel.mjs';
import { Workbench } from './support/workbench.js';

// The panels as a chef works with them: drawn, gone through, clicked to the line, lit by the cursor, out of date and back.

const ROOM_AND_TEAM = `
room "Long gallery" 18 m by 11 m {
    table T1 to T3: round 60 inch, 8 seats
}

team {
    captain 1
    servers 3
    runners 1
    plating-lines 1 at 12 plates per min
}
`;
const SOUP = 'soup-spoon warmed to 42 °C';

let workbench: Workbench;
let folder: string;
let window: EditorWindow;
beforeAll(async () => {
    workbench = await Workbench.start();
});
afterAll(() => workbench.stop());
beforeEach(async () => {
    folder = workbench.folder();
    writeFileSync(join(folder, 'supper.cover'), onDisk('supper.cover').trimEnd() + ROOM_AND_TEAM);
    window = await EditorWindow.open(workbench.address(folder), { width: 1600, height: 1000 });
    await window.openFile('supper.cover');
    await window.ready();
});
afterEach(async ({ task }) => {
    await window.picture(`panels, ${task.name}`);
    await window.close();
});

const onDisk = (name: string): string => readFileSync(join(folder, name), 'utf8');

/** What is in the panel in sight. */
function panel(): FrameLocator {
    return window.page.frameLocator('iframe.webview.ready:visible').frameLocator('#active-frame');
}

const TABS: Readonly<Record<string, string>> = {
    'Show the Laid Table': 'Laid table',
    'Show the Evening': 'Evening',
    'Show the Pull List': 'Pull list',
};

async function open(command: string): Promise<FrameLocator> {
    await window.run(`Underliner: ${command}`);
    await window.page.locator(`.tab.active[aria-label^="${TABS[command]}: Quiet supper"]`).waitFor();
    await panel().locator('h1', { hasText: 'Quiet supper' }).waitFor();
    return panel();
}
/** The group of editors on the left, where texts are. */
async function toText(name = 'supper.cover'): Promise<void> {
    await window.press('Control+1');
    await window.openFile(name);
}
const steps = (shown: FrameLocator): Locator => shown.locator('#step');
/** The pieces that a list of the table panel names. */
const listed = (shown: FrameLocator, state: string): Promise<string[]> =>
    shown.locator(`section.${state} li`).allInnerTexts();

async function selected(): Promise<string> {
    return (await window.page.locator('#status\\.editor\\.selection').innerText()).trim();
}
/** Waits until the editor's cursor is in a line that holds some words. */
async function cursorIn(words: string): Promise<void> {
    await expect
        .poll(async () => {
            const [, line] = /Ln (\d+)/.exec(await selected()) ?? [];
            return onDisk('supper.cover').split('\n')[Number(line) - 1];
        })
        .toContain(words);
}

describe('the table panel', () => {
    it('is gone through step by step, and clicked to the line', async () => {
        const shown = await open('Show the Laid Table');
        expect(await steps(shown).innerText()).toBe('Step 1 of 12: Guests sit');
        expect(await listed(shown, 'standing')).toContain('dinner fork');
        await window.picture('panels, laid when guests sit');
        const slider = shown.locator('#choose-step');
        await slider.focus();
        for (const title of ['Serve Smoked beet', 'Smoked beet is eaten', 'Clear Smoked beet', 'Bring what']) {
            await slider.press('ArrowRight');
            await steps(shown).filter({ hasText: title }).waitFor();
            await window.picture(`panels, ${title}`);
        }
        expect(await listed(shown, 'brought')).toEqual(['soup spoon']);
        await shown.locator('svg [data-piece="brought-1"]').hover();
        await shown.locator('#named', { hasText: 'soup spoon, brought now' }).waitFor();
        await shown.locator('svg [data-piece="brought-1"]').click();
        await cursorIn(SOUP);
        await shown.locator('section.standing button', { hasText: 'dinner fork' }).first().press('Enter');
        await cursorIn('Braised chicken');
    });

    it('lights what the cursor is in', async () => {
        const shown = await open('Show the Laid Table');
        await toText();
        await window.goToWords('dish "Braised chicken"', 8);
        await shown.locator('button.lit', { hasText: 'dinner knife' }).waitFor();
        await shown.locator('svg .lit[data-piece]').first().waitFor();
        await window.picture('panels, lit by the cursor');
        await window.goToWords('captain 1');
        await expect.poll(() => shown.locator('.lit').count()).toBe(0);
    });

    it('goes out from one cover to the room, and back, with keys and buttons', async () => {
        const shown = await open('Show the Laid Table');
        const pressed = shown.locator('button[aria-pressed="true"]');
        await shown.locator('#step-on').click();
        await shown.locator('#picture').focus();
        for (const view of ['Neighbours', 'Table', 'Room']) {
            await window.press('-');
            await pressed.filter({ hasText: view }).waitFor();
            await shown.locator('#picture > svg').waitFor();
            await window.picture(`panels, ${view.toLowerCase()}`);
        }
        await shown.locator('svg [data-table="T2"]').click();
        await cursorIn('table T1 to T3');
        await shown.locator('#view-table').click();
        await shown.locator('#choose-table').selectOption('T3');
        await shown.locator('svg title', { hasText: 'table T3' }).first().waitFor({ state: 'attached' });
        await shown.locator('#view-cover').click();
        await shown.locator('#choose-variation').selectOption('1');
        await shown.locator('svg title', { hasText: 'Barley-stuffed squash' }).first().waitFor({ state: 'attached' });
    });

    it('follows what is typed, is marked while the text has errors, and keeps what it showed', async () => {
        const shown = await open('Show the Laid Table');
        await shown.locator('#step-on').click();
        await steps(shown).filter({ hasText: 'Serve Smoked beet' }).waitFor();
        await toText();
        await window.replace('Smoked beet"', 'Beet and curd"');
        await steps(shown).filter({ hasText: 'Serve Beet and curd' }).waitFor();
        await window.replace('salad-plate', 'salad-plat');
        await shown.locator('#stale', { hasText: 'Out of date: 1 error stands in the text.' }).waitFor();
        expect(await shown.locator('svg [data-piece="vessel-1"]').count()).toBe(1);
        await window.picture('panels, out of date');
        await shown.locator('#anyway').click();
        await shown.locator('#stale', { hasText: 'Not to be relied on' }).waitFor();
        await toText();
        await window.replace('salad-plat', 'salad-plate');
        await expect.poll(() => shown.locator('#stale').innerText()).toBe('');
    });

    it('is there again when the window is opened again, with what was chosen', async () => {
        const shown = await open('Show the Laid Table');
        await shown.locator('#choose-step').press('End');
        await steps(shown).filter({ hasText: 'Guests leave' }).waitFor();
        await shown.locator('#view-table').click();
        await shown.locator('button[aria-pressed="true"]', { hasText: 'Table' }).waitFor();
        const gone = window.page.waitForEvent('framenavigated', (frame) => frame === window.page.mainFrame());
        await window.run('Developer: Reload Window');
        await gone;
        await window.page.waitForSelector('.monaco-workbench');
        await panel().locator('button[aria-pressed="true"]', { hasText: 'Table' }).waitFor({ timeout: 60_000 });
        await steps(panel()).filter({ hasText: 'Guests leave' }).waitFor();
    });

    it('stays with its plan when it is told to, else follows the plan in sight', async () => {
        writeFileSync(join(folder, 'lunch.cover'), onDisk('supper.cover').replace('"Quiet supper"', '"Long lunch"'));
        const shown = await open('Show the Laid Table');
        await toText('lunch.cover');
        await shown.locator('h1', { hasText: 'Long lunch' }).waitFor();
        await shown.locator('#choose-stay').check();
        await toText();
        await window.ready();
        await window.page.waitForTimeout(1000);
        expect(await shown.locator('h1').innerText()).toBe('Long lunch');
        await shown.locator('#choose-stay').uncheck();
        await toText('house.cover');
        await toText();
        await shown.locator('h1', { hasText: 'Quiet supper' }).waitFor();
    });
});

describe('panels', () => {
    it('lose nothing at twice the size', async () => {
        await window.run('View: Toggle Primary Side Bar Visibility');
        // A window of 1600 by 1000 whose words are twice as large.
        await window.page.setViewportSize({ width: 800, height: 500 });
        for (const command of ['Show the Laid Table', 'Show the Evening', 'Show the Pull List']) {
            const shown = await open(command);
            expect(await shown.locator('body').evaluate(widerThanPage)).toEqual([]);
            // The evening alone is longer than its panel in full size; lists and the laid table are there whole.
            const whole = command === 'Show the Evening' ? '.list' : '.list, .picture';
            const hidden = (): Promise<string[]> => shown.locator(whole).evaluateAll(scrolledAside);
            await expect.poll(hidden).toEqual([]);
            await window.picture(`panels, twice the size, ${command}`);
        }
    });
});

describe('the pull panel', () => {
    it('lists what is short, leads to its lines, and is copied as CSV', async () => {
        writeFileSync(join(folder, 'house.cover'), onDisk('house.cover').replace('40 soup-bowl', '20 soup-bowl'));
        const shown = await open('Show the Pull List');
        const short = shown.locator('tr.short');
        await short.waitFor();
        expect((await short.innerText()).replace(/\s+/g, ' ')).toMatch(/soup bowl.* 20 ▲ 6 short/);
        await window.picture('panels, short');
        await short.getByRole('button', { name: 'soup bowl' }).click();
        await cursorIn('served in soup-bowl');
        await short.getByRole('button', { name: '20 owned' }).click();
        await window.page.waitForSelector('.tab.active[data-resource-name="house.cover"]');
        await shown.locator('#copy').click();
        await window.page.locator('.statusbar', { hasText: 'copied as CSV' }).waitFor();
    });
});

describe('the evening panel', () => {
    it('shows who does what over the clock, and is clicked to the line', async () => {
        const shown = await open('Show the Evening');
        await shown.locator('svg [data-lane]').first().waitFor();
        await window.picture('panels, evening');
        await shown.locator('svg [data-lane][data-course="1"]').first().click();
        await cursorIn('course soup');
        await shown.getByRole('button', { name: 'Main course' }).press('Enter');
        await cursorIn('course main');
        await shown.locator('#size-fit').click();
        await shown.locator('.whole svg').waitFor();
        // However wide the panel is, the whole is drawn for it, in words that can be read.
        for (const width of [1600, 1000, 2400]) {
            await window.page.setViewportSize({ width, height: 1000 });
            const seen = () => shown.locator('.whole svg').evaluate(smallestWords);
            await expect.poll(seen, { message: `${width}` }).toBeGreaterThanOrEqual(11);
            await expect.poll(seen, { message: `${width}` }).toBeLessThan(16);
            await window.picture(`panels, whole evening, ${width}`);
        }
        await shown.locator('#part-strike').click();
        await shown.locator('svg [data-lane="Counting"]').first().waitFor();
        expect(await shown.locator('svg [data-lane="captain"]').count()).toBe(0);
        await window.picture('panels, strike');
    });
});

const THEMES = [
    ['light', 'Default Light Modern', 'vs'],
    ['dark', 'Default Dark Modern', 'vs-dark'],
    ['high contrast', 'Default High Contrast', 'hc-black'],
    ['high contrast light', 'Default High Contrast Light', 'hc-light'],
] as const;
describe.each(THEMES)('in a %s theme', (name, theme, look) => {
    it('panels take their colours from it', async () => {
        workbench.set({ 'workbench.colorTheme': theme });
        await window.reopen();
        await window.page.locator(`.monaco-workbench.${look}`).waitFor();
        await window.openFile('supper.cover');
        await window.ready();
        const shown = await open('Show the Laid Table');
        await shown.locator('#choose-step').focus();
        for (const title of ['Serve', 'eaten', 'Clear']) {
            await window.press('ArrowRight');
            await steps(shown).filter({ hasText: title }).waitFor();
            await window.page.waitForTimeout(300);
            await window.picture(`panels, ${name}, ${title}`);
        }
        expect(await shown.locator('body').evaluate(faintWords)).toEqual([]);
        for (const [command, kind] of [
            ['Show the Evening', 'evening'],
            ['Show the Pull List', 'pull'],
        ] as const) {
            const other = await open(command);
            await other.locator('#list').waitFor();
            if (kind === 'evening') {
                await other.locator('#size-fit').click();
                await other.locator('.whole svg').waitFor();
            }
            await window.page.waitForTimeout(1000);
            await window.picture(`panels, ${name}, ${kind}`);
            expect(await other.locator('body').evaluate(faintWords)).toEqual([]);
        }
    });
});
