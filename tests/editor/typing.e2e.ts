import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { EditorWindow, type Shown } from './support/editor-window.js';
import { Workbench } from './support/workbench.js';

// A chef's evening at the editor: the packed extension, a folder, keys and the mouse.

let workbench: Workbench;
let folder: string;
let window: EditorWindow;
beforeAll(async () => {
    workbench = await Workbench.start();
});
afterAll(() => workbench.stop());
beforeEach(async () => {
    folder = workbench.folder();
    window = await EditorWindow.open(workbench.address(folder));
    await window.openFile('supper.cover');
    await window.ready();
});
afterEach(async ({ task }) => {
    await window.picture(`typing, ${task.name}`);
    await window.close();
});

const onDisk = (name: string): string => readFileSync(join(folder, name), 'utf8');
const isUnderlined = (words: string) => (all: readonly Shown[]) => all.some((each) => each.words === words);
const isClean = (all: readonly Shown[]): boolean => all.length === 0;

const TYPED = `event "Salt feast" {
    date 2027-02-20
    zone Europe/London
    seated 19:30
    guests 72 {
        6 vegetarian
        2 without peanut
        3 gluten-free
        4 children
    }
}

room "Long gallery" 18 m by 11 m {
    at 20 °C
    table A to I: round 60 inch, 8 seats
}

team {
    captain 1
    servers 6
    wine-servers 2
}

menu {
    bread from appetizer until main on bread-plate with butter-spreader {
        contains wheat, milk
    }
    course appetizer "Smoked eel" {
        served on salad-plate at 5 °C
        lasts 15 min
        contains fish, mustard
    }
    course main {
        lasts 35 min
        dish "Venison" is roast for the rest {
            served on dinner-plate warmed to 62 °C at 58 °C
            contains celery, sulphites
        }
        dish "Barley" is grain-main for vegetarian {
            served on dinner-plate warmed to 62 °C at 63 °C
            contains barley, celery
        }
        pour "Country red" 4 fl oz into red-wine-glass at 16 °C, is medium-red-wine {
            contains sulphites
            instead "Pressed blackcurrant" 4 fl oz, is juice { contains nothing }
        }
    }
    coffee after main
}
`;

describe('in the real editor', () => {
    it('a word is underlined and mended by the light bulb', async () => {
        await window.replace('soup-spoon', 'soup-spon');
        const shown = await window.waitForUnderlined(isUnderlined('soup-spon'));
        expect(shown).toEqual([{ severity: 'error', words: 'soup-spon' }]);
        const told = await window.hover('soup-spon', 'No piece is called `soup-spon`.');
        expect(told).toMatch(/No piece is called `soup-spon`\.\s+Did you mean `soup-spoon`\?/);
        expect(told).toContain('unknown-name');
        await window.picture('a finding and its reason');
        await window.press('Escape');
        await window.goToWords('soup-spon', 2);
        const fixes = await window.fixes();
        expect(fixes[0]).toBe('Write `soup-spoon`');
        await window.picture('a light bulb');
        await window.choose('Write `soup-spoon`');
        await window.waitForUnderlined(isClean);
        await window.save();
        expect(onDisk('supper.cover')).toContain('eaten with soup-spoon warmed');
    });

    it('proposes what suits the dish, and a unit after a number', async () => {
        await window.replace('soup-spoon warmed', 'soup');
        await window.press('Control+Space');
        await window.proposals('soup-spoon');
        await window.picture('completion');
        await window.press('Enter');
        await expect.poll(() => window.text()).toContain('eaten with soup-spoon to 42 °C');
        await window.goToWords('lasts 15 min', 'lasts 15 min'.length);
        await window.press('Backspace', ' min'.length);
        await window.press('Control+Space');
        await window.proposals('min');
        await window.press('Enter');
        await expect.poll(() => window.text()).toContain('lasts 15 min');
    });

    it('proposes while a word is typed, without being asked', async () => {
        await window.replace('soup-spoon warmed to 42 °C', '');
        await window.type('soup-sp');
        await window.proposals('soup-spoon');
        await window.press('Enter');
        await expect.poll(() => window.text()).toContain('eaten with soup-spoon');
    });

    it('proposes a name under another word for it, and writes the name', async () => {
        await window.replace('contains milk', 'contains ');
        await window.type('shr');
        await window.proposals('shrimp');
        await window.picture('another word for a name');
        await window.press('Enter');
        await expect.poll(() => window.text()).toContain('contains prawn');
    });

    // Whatever is proposed, closed or laid out on the way, a person who takes none of it gets what they typed.
    it('keeps every word of a plan that is typed from nothing, and lays it out', async () => {
        writeFileSync(join(folder, 'feast.cover'), '');
        await window.openFile('feast.cover');
        const lines = TYPED.split('\n').map((line) => line.trim());
        for (const [index, line] of lines.entries()) {
            if (line === '}') {
                await window.leaveBlock(index + 1);
            } else if (line.endsWith('{')) {
                await window.openBlock(index + 1, line);
            } else {
                await window.type(line);
            }
            if (index < lines.length - 1 && lines[index + 1] !== '}') {
                await window.press('Enter');
            }
        }
        await window.save();
        expect(onDisk('feast.cover')).toBe(TYPED);
    });

    it('tells of a piece, a figure and a kind', async () => {
        await window.hover('soup-bowl', 'The house owns 40');
        await window.drawnInHover('soup-bowl from above');
        await window.picture('a piece');
        await window.hover('64 °C', '64 °C is 147 °F.');
        await window.hover('smoked-beet', 'A sort of appetizer');
    });

    it('goes into the standard cupboard, where nothing is to be changed', async () => {
        await window.goToWords('soup-bowl', 2);
        await window.press('F12');
        await window.page.waitForSelector('.tab.active[data-resource-name="bowls-and-cups.cover"]');
        await expect.poll(() => window.text()).toMatch(/^bowl soup-bowl/m);
        await window.picture('the standard cupboard');
        expect(await window.underlined()).toEqual([]);
    });

    it('opens the page of a rule from a finding', async () => {
        await window.replace('soup-spoon', 'soup-spon');
        await window.waitForUnderlined(isUnderlined('soup-spon'));
        await window.hover('soup-spon', 'unknown-name');
        await window.page.locator('.monaco-hover a.code-link').click();
        await window.page.locator('.tab.active', { hasText: 'unknown-name' }).waitFor();
        await expect
            .poll(() => window.wordsInFrames())
            .toContain('A mistyped piece is never pulled from the store, and a mistyped allergen protects nobody.');
        await window.picture('the page of a rule');
    });

    it('renames over files', async () => {
        await window.goToWords('smoked-beet', 2);
        await window.press('F2');
        const input = window.page.locator('.rename-box input');
        await input.waitFor();
        await input.fill('hay-smoked-beet');
        await input.press('Enter');
        await expect.poll(() => window.text()).toContain('is hay-smoked-beet for everyone');
        await window.run('File: Save All');
        await expect.poll(() => onDisk('cupboard.cover')).toContain('kind hay-smoked-beet is appetizer');
        await window.waitForNoProblems();
    });

    it('lays a file out when it is saved', async () => {
        workbench.setFolder(folder, { '[cover]': { 'editor.formatOnSave': true } });
        await window.reopen();
        // An editor left within seconds may not have noted yet what it had open.
        await window.openFile('supper.cover');
        await window.ready();
        await window.replace('    lasts 15 min', '  lasts    15 min');
        await window.press('Control+s');
        await expect.poll(() => onDisk('supper.cover')).toContain('\n        lasts 15 min\n');
    });

    it('shows the outline', async () => {
        await window.press('Control+Shift+o');
        const rows = window.page.locator('.quick-input-list .monaco-list-row');
        await rows.filter({ hasText: 'Roast squash soup' }).waitFor();
        const labels = await rows.locator('.monaco-icon-label .label-name').allInnerTexts();
        expect(labels.map((label) => label.trim())).toEqual([
            'Quiet supper',
            'menu',
            'Smoked beet',
            'Smoked beet and curd',
            'Roast squash soup',
            'Main course',
            'Braised chicken',
            'Barley-stuffed squash',
        ]);
    });

    it('compiles the plan, and refuses while something is wrong', async () => {
        await window.run('Underliner: Compile the Service Plan');
        await window.notice('The service plan is in supper.plan.json.').waitFor();
        const plan = JSON.parse(onDisk('supper.plan.json')) as { event: { title: string } };
        expect(plan.event.title).toBe('Quiet supper');
        await window.run('Notifications: Clear All Notifications');
        await window.replace('soup-spoon', 'soup-spon');
        await window.waitForUnderlined(isUnderlined('soup-spon'));
        await window.run('Underliner: Compile the Service Plan');
        await window.notice('1 error stands in the way: no plan was written.').waitFor();
        await window.picture('a plan that is refused');
    });

    it('checks a compiled plan by its schema', async () => {
        await window.run('Underliner: Compile the Service Plan');
        await window.notice('The service plan is in').getByText('Open', { exact: true }).click();
        await window.page.waitForSelector('.tab.active[data-resource-name="supper.plan.json"]');
        await window.replace('title', 'titel');
        // Nothing but what is wrong: the plan itself has all that the schema wants.
        const wrong = ['"event"', '"titel"'];
        await window.waitForUnderlined((all) => String(all.map(({ words }) => words).sort()) === String(wrong));
        await window.picture('a compiled plan with a mistake');
    });

    it('begins a new event that checks clean', async () => {
        await window.run('Underliner: New Event…');
        await window.answer('What is the event called?', 'Lantern night');
        await window.answer('On which day is it?', '17 October 2026');
        await window.answer('How many guests are expected?', '36');
        await window.page.waitForSelector('.tab.active[data-resource-name="lantern-night.cover"]');
        await expect.poll(() => window.summary()).toMatch(/36 guests.*Nothing found\./s);
        await window.picture('a new event');
        expect(onDisk('lantern-night.cover')).toContain('date 2026-10-17');
        expect(onDisk('lantern-night.cover')).toContain('use "house.cover"');
        expect(await window.underlined()).toEqual([]);
        await window.waitForNoProblems();
    });

    it('lays out every plan of the folder', async () => {
        await window.replace('    lasts 15 min', '  lasts    15 min');
        await window.save();
        expect(onDisk('supper.cover')).toContain('  lasts    15 min');
        await window.run('Underliner: Lay Out Every Plan of a Folder');
        await window.notice('1 of 3 plans laid out anew.').waitFor();
        await expect.poll(() => onDisk('supper.cover')).toContain('\n        lasts 15 min\n');
    });

    it('finds what others do to the folder', async () => {
        writeFileSync(join(folder, 'house.cover'), onDisk('house.cover').replace('limit: 3', 'limit: 0'));
        await window.waitForUnderlined((all) => all.some(({ severity }) => severity === 'warning'));
        writeFileSync(join(folder, 'house.cover'), onDisk('house.cover').replace('limit: 0', 'limit: 3'));
        await window.waitForUnderlined(isClean);
    });

    it('serves a file that was never saved', async () => {
        await window.run('File: New Untitled Text File');
        await window.page.locator('.tab.active', { hasText: 'Untitled-1' }).waitFor();
        await window.run('Change Language Mode');
        await window.fillIn('Select Language Mode', 'Service plan');
        await window.type('house "Ours" { spare 5 }');
        await window.waitForUnderlined(isUnderlined('5'));
        await window.picture('an unsaved file');
    });

    it('keeps guests, courses and the worst finding in sight', async () => {
        await expect.poll(() => window.summary()).toMatch(/24 guests, 3 courses.*Nothing found\./s);
        await window.replace('soup-spoon', 'soup-spon');
        await expect.poll(() => window.summary()).toContain('No piece is called `soup-spon`.');
        await window.status.hover();
        await window.page.locator('.monaco-hover', { hasText: '1 error' }).waitFor();
        await window.picture('the status item');
    });
});
