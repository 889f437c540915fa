import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { EditorWindow } from './support/editor-window.js';
import { Workbench } from './support/workbench.js';

// What is computed and shown in the text, and what the light bulb and the explorer do beyond mending.

const TEAM = `
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

let workbench: Workbench;
let folder: string;
let window: EditorWindow;
beforeAll(async () => {
    workbench = await Workbench.start();
});
afterAll(() => workbench.stop());
beforeEach(async () => {
    folder = workbench.folder();
    writeFileSync(join(folder, 'supper.cover'), onDisk('supper.cover').trimEnd() + TEAM);
    window = await EditorWindow.open(workbench.address(folder));
    await window.openFile('supper.cover');
    await window.ready();
});
afterEach(async ({ task }) => {
    await window.picture(`more, ${task.name}`);
    await window.close();
});

const onDisk = (name: string): string => readFileSync(join(folder, name), 'utf8');

describe('beyond typing', () => {
    it('figures stand between and above the lines, and can be switched off', async () => {
        const text = () => window.text();
        await expect.poll(text).toMatch(/course soup "Roast squash soup"\s*19:\d\d to 19:\d\d/);
        await expect.poll(text).toMatch(/for everyone\s*24 guests/);
        await expect.poll(() => window.lenses()).toContainEqual(expect.stringContaining('24 guests'));
        workbench.setFolder(folder, { 'underliner.hints.times': false, 'underliner.codeLens': false });
        await expect.poll(text).not.toMatch(/19:\d\d to 19:\d\d/);
        await expect.poll(() => window.lenses()).toEqual([]);
        expect(await window.text()).toMatch(/24 guests/);
    });

    it('a rule is waived with the reason that is asked for', async () => {
        writeFileSync(join(folder, 'house.cover'), onDisk('house.cover').replace('limit: 3', 'limit: 1'));
        // Figures above the lines have pushed the main course out of sight.
        await window.goTo(44, 1);
        const shown = await window.waitForUnderlined((all) => all.some(({ severity }) => severity === 'warning'));
        await window.goToWords(shown[0]!.words, 3);
        const titles = await window.fixes();
        expect(titles).toContain('Turn `three-per-side` off for the house because …');
        await window.picture('a light bulb with waivers');
        await window.choose('Waive `three-per-side` here because …');
        await window.answer('Say why in a few words', 'agreed with the host');
        await window.save();
        await expect
            .poll(() => onDisk('supper.cover'))
            .toContain('waive three-per-side because "agreed with the host"');
        await window.waitForUnderlined((all) => all.length === 0);
    });

    it('the light bulb leads to the line that can not be read', async () => {
        writeFileSync(join(folder, 'house.cover'), onDisk('house.cover').replace('limit: 3', 'limit: 1'));
        await window.press('Control+End');
        await window.goToWords('room "Long gallery"');
        await window.press('End');
        await window.press('Enter');
        await window.type('aisel 1.2 m');
        await window.press('Escape');
        await window.waitForUnderlined((all) => all.some(({ words }) => words === 'aisel'));
        await window.goTo(44, 1);
        const shown = await window.waitForUnderlined((all) => all.some(({ severity }) => severity === 'warning'));
        await window.goToWords(shown.find(({ severity }) => severity === 'warning')!.words, 3);
        const titles = await window.fixes();
        await window.picture('a light bulb that leads to the line that can not be read');
        expect(titles[0]).toMatch(/^Write aisle in line \d+, which can’t be read$|^Write `aisle` in line \d+, which/);
        expect(titles[1]).toMatch(/^Go to line \d+, which can’t be read$/);
        await window.choose('Go to line');
        const [line] = /\d+/.exec(titles[1]!)!;
        await window.page.locator('#status\\.editor\\.selection', { hasText: `Ln ${line},` }).waitFor();
    });

    it('a part goes to a file of its own', async () => {
        await window.press('Control+End');
        await window.goToWords('room "Long gallery"', 8);
        expect(await window.fixes('Control+Shift+r')).toContain('Move the room `Long gallery` to `long-gallery.cover`');
        await window.choose('Move the room `Long gallery` to `long-gallery.cover`');
        await window.run('File: Save All');
        await expect.poll(() => existsSync(join(folder, 'long-gallery.cover'))).toBe(true);
        await expect.poll(() => onDisk('long-gallery.cover')).toMatch(/^room "Long gallery"/);
        expect(onDisk('supper.cover')).toContain('use "long-gallery.cover"');
        await window.waitForNoProblems();
    });

    it('a file that is renamed in the explorer is used by its new name', async () => {
        await window.page.locator('.explorer-folders-view .monaco-list-row[aria-label^="house.cover"]').click();
        await window.press('F2');
        const input = window.page.locator('.explorer-folders-view .monaco-inputbox input');
        await input.fill('our-house.cover');
        await input.press('Enter');
        await window.page.locator('.monaco-dialog-box', { hasText: 'wants to make refactoring changes' }).waitFor();
        await window.press('Enter');
        await window.run('File: Save All');
        await expect.poll(() => onDisk('supper.cover')).toContain('use "our-house.cover"');
        await window.waitForNoProblems();
    });

    it('a closing brace lays out its block', async () => {
        workbench.setFolder(folder, { '[cover]': { 'editor.autoClosingBrackets': 'never' } });
        // An editor may take a while to see a change of its settings' file; a new window reads it.
        await window.reopen();
        await window.openFile('supper.cover');
        await window.ready();
        await window.goToWords('course soup');
        await window.page.keyboard.insertText(
            'course cheese "Cheeses" { served on cheese-plate at 16 °C   lasts   15 min\ncontains milk\n',
        );
        await window.press('Enter');
        await window.press('ArrowUp');
        await window.press('End');
        await window.type('}');
        await expect
            .poll(() => window.text())
            .toContain(
                'course cheese "Cheeses" {\n        served on cheese-plate at 16 °C\n        lasts 15 min\n        contains milk\n    }',
            );
    });

    it('a brace that the editor closes gets its blanks when the line is left', async () => {
        await window.goToWords('lasts');
        await window.press('End');
        await window.press('Enter');
        await window.type('garnish "Chive oil" {contains nothing');
        await window.press('Escape');
        await expect.poll(() => window.text()).toContain('{contains nothing}');
        await window.press('End');
        await window.press('Enter');
        await expect.poll(() => window.text()).toContain('garnish "Chive oil" { contains nothing }');
    });

    it('the walkthrough opens with five steps', async () => {
        await window.run('Welcome: Open Walkthrough...');
        await window.fillIn('Select a walkthrough to open', 'Your first event');
        await window.page.locator('.getting-started-step').first().waitFor();
        expect(await window.page.locator('.getting-started-step').count()).toBe(5);
        await expect.poll(() => window.wordsInFrames()).toContain('A plan is plain text in a file');
        await window.picture('the walkthrough');
    });
});
