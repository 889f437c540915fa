import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { check, filesInMemory } from 'underliner-language';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { EditorWindow } from './support/editor-window.js';
import { Workbench } from './support/workbench.js';

// A chef writes a dinner from nothing with what the editor offers: an empty folder, proposals, blocks to fill in, the light
// bulb, the panels and the late question. The mistakes of such evenings are made on the way, and mended.
// The tests follow one another in one window, as the work does. The pictures of the extension's readme are made here.

let workbench: Workbench;
let folder: string;
let window: EditorWindow;
beforeAll(async () => {
    workbench = await Workbench.start();
    folder = workbench.emptyFolder();
    // Nearly all of the plan is in sight.
    window = await EditorWindow.open(workbench.address(folder), { width: 1400, height: 1700 });
});
afterAll(async () => {
    await window.close();
    await workbench.stop();
});
afterEach(({ task }) => window.picture(`new event, ${task.name}`));

const NAME = 'heron-supper.cover';
const onDisk = (name = NAME): string => readFileSync(join(folder, name), 'utf8');
const holds = (words: string | RegExp): Promise<void> =>
    expect.poll(() => window.text().then((text) => text.replace(/\s+/g, ' '))).toMatch(words);

/** Writes words, each `[name]` among them taken from the proposals once its first letters are typed. */
async function write(words: string): Promise<void> {
    for (const [, typed, name] of words.matchAll(/([^[\]]*)(?:\[([^\]]*)\])?/g)) {
        await window.type(typed!);
        if (name) {
            await window.type(name.slice(0, 3));
            await window.accept(name);
        }
    }
}
/** A new line below the first line that holds some words. */
async function below(words: string, lines = 0): Promise<void> {
    await window.goToWords(words);
    await window.press('ArrowDown', lines);
    await window.press('Control+Enter');
}
async function writeBelow(words: string, lines: number, written: string): Promise<void> {
    await below(words, lines);
    await write(written);
}
/** Takes a fix, or what else can be done, at a bar in words in sight. */
async function mend(words: string, title: string, picture?: string, forReadme?: string): Promise<void> {
    await window.goToWords(words.replace('|', ''), words.indexOf('|'));
    await window.until(
        'What is offered',
        () =>
            window.fixes().then(async (titles) => {
                if (!titles.includes(title)) {
                    await window.press('Escape');
                }
                return titles;
            }),
        (titles) => titles.includes(title),
    );
    if (picture) {
        await window.picture(picture);
    }
    if (forReadme) {
        const list = (await window.page.locator('.action-widget').boundingBox())!;
        await window.readmePicture(forReadme, { x: list.x - 230, y: list.y - 130, width: 820, height: 540 });
    }
    await window.choose(title);
}
const panel = (): FrameLocator =>
    window.page.frameLocator('iframe.webview.ready:visible').frameLocator('#active-frame');
async function open(command: string, tab: string): Promise<FrameLocator> {
    await window.press('Control+1');
    await window.run(`Underliner: ${command}`);
    await window.page.locator(`.tab.active[aria-label^="${tab}: Heron supper"]`).waitFor();
    await panel().locator('h1', { hasText: 'Heron supper' }).waitFor();
    return panel();
}
const errors = async (): Promise<readonly string[]> =>
    (await window.underlined()).filter(({ severity }) => severity === 'error').map(({ words }) => words);

// Each goes on from what the one before left, so none can be tried again.
describe('a dinner from nothing', { retry: 0 }, () => {
    it('begins with three answers', async () => {
        await window.run('Underliner: New Event…');
        await window.answer('What is the event called?', 'Heron supper');
        await window.answer('On which day is it?', '17 October 2026');
        await window.answer('How many guests are expected?', '24');
        await window.page.waitForSelector(`.tab.active[data-resource-name="${NAME}"]`);
        await expect.poll(() => window.summary()).toMatch(/24 guests.*Nothing found\./s);
    });

    it('knows who comes', async () => {
        await window.replace('zone UTC', 'zone America/Halifax');
        await window.goTo(9, 'guests 24'.length + 5);
        await write(' {');
        await window.press('Enter');
        await write('4 [vegetarian]');
        await window.press('Enter');
        await window.type('1 ');
        await window.press('Control+Space');
        await window.proposals('vegetarian');
        await window.picture('new event, who may come');
        await write('[without] [gluten]');
        await window.press('Enter');
        await write('2 [children]');
        await holds('4 vegetarian 1 without gluten 2 children');
        // Nothing of the first menu suits them all.
        await expect.poll(errors).toContain('wheat');
    });

    it('takes a course from a block to fill in', async () => {
        await below('menu {');
        await window.type('cour');
        await window.proposals('course');
        await window.picture('new event, blocks to fill in');
        await window.accept('course, one dish');
        await write('[appetizer]');
        await window.press('Tab');
        await window.type('Pickled beetroot');
        await window.press('Tab');
        await window.proposals('in');
        await window.accept('on');
        // The choice leads on to the next place by itself.
        await holds('Pickled beetroot" { served on');
        await window.press('Backspace');
        await window.press('Control+Space');
        await window.proposals('entree-plate');
        await window.picture('new event, plates that suit');
        await window.accept('salad-plate');
        await window.press('Tab');
        await window.type('8');
        await window.press('Tab', 2);
        await write('[mustard]');
        await holds('served on salad-plate at 8 °C lasts 15 min contains mustard');
    });

    it('gives its guests two mains, and wine with something else for the children', async () => {
        await window.cutLines('course main "Roast', 6);
        await window.press('Enter');
        await window.press('ArrowUp');
        await write('    [course, several dishes]');
        await window.press('Tab', 3);
        await window.type('Roast duck');
        await window.press('Tab', 4);
        await window.type('Barley and mushrooms');
        await window.press('Escape');
        await writeBelow('contains barley', 1, '[pour, with a choice]');
        await window.press('Escape');
        await holds(/instead "Pressed blackcurrant" 4 fl oz, is juice/);
        await expect.poll(errors).toContain('"Country red"');
        await window.picture('new event, alcohol reaches children');
        await mend('"Count|ry red"', 'Leave `Country red` off for children', 'new event, left off for children');
        await holds('left off for children');
    });

    it('has bread, a toast and coffee', async () => {
        await writeBelow('menu {', 0, 'bread from ');
        await window.press('Control+Space');
        await window.proposals('appetizer');
        await write('[appetizer] until [main] on ');
        await window.press('Control+Space');
        await window.proposals('bread-plate');
        await window.picture('new event, the plate for bread');
        await window.accept('bread-plate');
        await write(' with [butter-spreader] {');
        await window.press('Enter');
        await write('contains [wheat]');
        await window.press('Enter');
        await write(
            '[dish] "Buckwheat crispbread" for guests without [gluten] {{ contains [nothing]'.replace('{{', '{'),
        );
        await window.press('Control+End');
        await writeBelow('contains wheat, egg', 1, '[toast] "To the herons" after [main], lasts 3 min, with "');
        await window.proposals('Country red');
        await window.accept('Country red');
        await window.press('End');
        await window.press('Enter');
        await write('[coffee after] [dessert], on request { contains [nothing]');
        await holds(/with "Country red" coffee after dessert, on request \{ contains nothing ?\}/);
    });

    it('is held in a room of a house, by a team', async () => {
        for (const [block, holding] of [
            ['house, what it owns', 'own 110 dinner-fork'],
            ['room, with tables', 'table T1 to T9'],
            ['team, by role', 'servers 7'],
        ] as const) {
            await window.press('Control+End');
            await window.press('Enter');
            await window.type(block.slice(0, 4));
            await window.accept(block);
            await window.press('Escape');
            await holds(holding);
        }
        await window.replace('110 dinner-fork, 110 dinner-knife', '40 dinner-fork, 40 dinner-knife, 20 soup-bowl');
        await window.replace('us-model', 'canada');
        await window.replace('T9', 'T3');
        await window.replace('servers 7', 'servers 3');
        await window.replace('runners 3', 'runners 1');
        await window.press('Control+s');
        await expect.poll(() => onDisk()).toContain('zone America/Halifax');
    });

    it('is told its mistakes, with what mends them', async () => {
        await window.goTo(1, 1);
        await window.replace('soup-spoon', 'soup-spon');
        await window.replace(' warmed to 60 °C', '');
        await expect.poll(errors).toContain('soup-spon');
        await mend('soup-|spon', 'Write `soup-spoon`', 'new event, a piece misspelt');
        await window.hover('soup-bowl', 'is not warmed');
        await window.picture('new event, a hot soup in a cold bowl');
        await mend('served in soup-|bowl', 'Warm the `soup-bowl`', 'new event, what mends the bowl', 'finding');
        await holds('soup-bowl warmed');
        await mend('served in soup-|bowl', 'Rent 6 `soup-bowl`');
        // Each fix moves the lines below it: the next is looked for once that is to be seen.
        await holds('rent 6 soup-bowl');
        await mend('served in soup-|bowl', 'Stand `soup-bowl` on `underliner`');
        await holds('underliner');
        await window.press('Control+End');
        await mend(
            'whe|at, egg',
            'Split off a dish for guests without gluten',
            'new event, an allergen reaches a guest',
        );
        await window.press('Control+End');
        await window.picture('new event, a dish split off');
        await writeBelow('Lemon tart, without gluten', 0, 'contains [nothing]');
        await window.press('Control+s');
        await expect.poll(errors).toEqual([]);
    });

    it('is seen as it will be: the table, what is pulled, the evening', async () => {
        await window.page.setViewportSize({ width: 1400, height: 900 });
        await window.run('View: Toggle Primary Side Bar Visibility');
        const shown = { x: 724, y: 30, width: 676, height: 848 };
        const table = await open('Show the Laid Table', 'Laid table');
        await table.locator('#view-cover').click();
        await table.locator('#picture > svg').waitFor();
        await window.picture('new event, the laid table');
        await window.readmePicture('table', shown);
        const pull = await open('Show the Pull List', 'Pull list');
        await pull.locator('tbody tr').first().waitFor();
        await window.picture('new event, the pull list');
        await window.readmePicture('pull', shown);
        const evening = await open('Show the Evening', 'Evening');
        await evening.locator('svg [data-lane]').first().waitFor();
        await evening.locator('#size-fit').click();
        await evening.locator('.whole svg').waitFor();
        await window.picture('new event, the evening');
        await window.readmePicture('evening', shown);
        await window.press('Control+1');
    });

    it('answers what if more come', async () => {
        await window.run('Underliner: What If…');
        await window.fillIn('What comes out otherwise than planned?', 'Guests expected');
        await window.answer('The plan says 24', '27');
        await window.fillIn('What comes out otherwise than planned?', 'Show what changes');
        await expect.poll(() => window.wordsInFrames()).toContain('3 more covers, 27 in all.');
        await window.picture('new event, what if');
        await window.press('Control+1');
    });

    it('leaves the house to the next event, and is without a mistake', async () => {
        await window.page.setViewportSize({ width: 1400, height: 1700 });
        await window.press('Control+End');
        await window.goToWords('house "Saltmarsh Hall"', 8);
        await window.fixes('Control+Shift+r');
        await window.choose('Move the house to `house.cover`');
        await window.run('File: Save All');
        await expect
            .poll(() => existsSync(join(folder, 'house.cover')) && onDisk('house.cover'))
            .toContain('Saltmarsh');
        await expect.poll(() => onDisk()).toContain('use "house.cover"');
        const texts = { [NAME]: onDisk(), 'house.cover': onDisk('house.cover') };
        const { findings } = check(NAME, filesInMemory(texts));
        expect(findings.filter(({ severity }) => severity === 'error').map(({ message }) => message)).toEqual([]);
    });
});
