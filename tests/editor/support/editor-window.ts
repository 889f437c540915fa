import { join } from 'node:path';
import { chromium, type BrowserContext, type Locator, type Page } from 'playwright-core';
import { afterAll } from 'vitest';
import { browser } from '../set-up.mjs';
import { ARTEFACTS, README_PICTURES } from './artefacts.js';
import { colourOf, drawnImage, underlined, visibleLines, type Shown } from './in-page.mjs';

export type { Shown };

const BROWSER = [
    ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'],
    ...['--disable-background-networking', '--disable-component-update'],
    // This machine only.
    '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE *.localhost',
];

/** How long the editor may take for one thing on a machine that does much else; a test never fails for less. */
const PATIENCE = 60_000;
/** After how long a key or click that led to nothing is tried again. */
const TRY = 12_000;
/** How long a person waits for proposals before asking for them. */
const SHORT = 1500;

/** One browser for all windows of a test file: what it has loaded once it need not load again. */
let context: Promise<BrowserContext> | undefined;
afterAll(async () => {
    await (await context)?.browser()?.close();
    context = undefined;
});

async function startBrowser(): Promise<BrowserContext> {
    const started = await chromium.launch({ executablePath: browser(), args: BROWSER });
    return started.newContext({ viewport: { width: 1280, height: 800 } });
}

/** One window of the editor, used as a person uses it: with keys, the mouse and what is to be seen. */
export class EditorWindow {
    private constructor(readonly page: Page) {}

    /** @param size of the window, where another than the usual: an editor may miss a change of it while it opens */
    static async open(address: string, size?: { width: number; height: number }): Promise<EditorWindow> {
        context ??= startBrowser();
        const page = await (await context).newPage();
        if (size) {
            await page.setViewportSize(size);
        }
        page.setDefaultTimeout(PATIENCE);
        // "Leave without saving?"
        page.on('dialog', (dialog) => void dialog.accept().catch(() => undefined));
        const window = new EditorWindow(page);
        await page.goto(address);
        await page.waitForSelector('.monaco-workbench');
        return window;
    }

    /** Leaves the editor first, so that it stops what it runs for this window. */
    async close(): Promise<void> {
        await this.page.goto('about:blank');
        await this.page.close();
    }

    /** Opens the same folder anew. */
    async reopen(): Promise<void> {
        await this.page.reload();
        await this.page.waitForSelector('.monaco-workbench');
    }

    async picture(name: string): Promise<void> {
        await this.page.screenshot({ path: join(ARTEFACTS, `${name}.png`) });
    }

    /** A picture for the extension's readme, of a part of the window, where they are to be made anew. */
    async readmePicture(name: string, clip: { x: number; y: number; width: number; height: number }): Promise<void> {
        if (process.env.PICTURES === '1') {
            await this.page.screenshot({ path: join(README_PICTURES, `${name}.png`), clip });
        }
    }

    // ---------------------------------------------------------------- files and commands
    async openFile(name: string): Promise<void> {
        const row = this.page.locator(`.explorer-folders-view .monaco-list-row[aria-label^="${name}"]`);
        await this.insist(async () => {
            await row.first().dblclick({ timeout: TRY });
            await this.page.waitForSelector(`.tab.active[data-resource-name="${name}"]`, { timeout: TRY });
        });
        await this.page.waitForSelector('.editor-instance .view-line');
    }

    /** The extension's own item at the foot of the editor. */
    get status(): Locator {
        return this.page.locator('[id="underliner.underliner-vscode.underliner.summary"]');
    }

    /** What that item says, and says to a screen reader. */
    async summary(): Promise<string> {
        return `${await this.status.innerText()}: ${await this.status.getAttribute('aria-label')}`;
    }

    /** The words of pages that the editor shows in frames of their own. */
    async wordsInFrames(): Promise<string> {
        const words = this.page.frames().map((frame) =>
            frame
                .locator('body')
                .innerText({ timeout: 1000 })
                .catch(() => ''),
        );
        return (await Promise.all(words)).join('\n').replace(/\s+/g, ' ');
    }

    /** Waits until the language server knows the plan in sight. */
    async ready(): Promise<void> {
        await this.status.waitFor();
    }

    // ---------------------------------------------------------------- patience
    /** Waits until what is seen satisfies. @returns it */
    async until<Seen>(what: string, see: () => Promise<Seen>, satisfies: (seen: Seen) => boolean): Promise<Seen> {
        const end = performance.now() + PATIENCE;
        for (;;) {
            const seen = await see();
            if (satisfies(seen)) {
                return seen;
            }
            if (performance.now() > end) {
                throw new Error(`${what} did not become so: ${JSON.stringify(seen)}`);
            }
            await this.page.waitForTimeout(100);
        }
    }

    /** Does again what led to nothing: a key that is pressed while something else opens goes astray, as a person's does. */
    private async insist<Result>(attempt: () => Promise<Result>): Promise<Result> {
        for (let time = 1; ; time++) {
            try {
                return await attempt();
            } catch (failure) {
                if (time === 5) {
                    throw failure;
                }
            }
        }
    }

    /** Runs a command by its title, as the command palette lists it. */
    async run(title: string): Promise<void> {
        const input = this.page.locator('.quick-input-widget input[type="text"]');
        const row = this.page
            .locator('.quick-input-list .monaco-list-row')
            .filter({ has: this.page.getByText(title, { exact: true }) });
        await this.insist(async () => {
            // A list that is open already does not know what was added since.
            if (await input.isVisible()) {
                await this.press('Escape');
            }
            await this.page.keyboard.press('F1');
            await input.fill(`>${title}`, { timeout: TRY });
            await row.first().click({ timeout: TRY });
        });
    }

    /** Picks from a list that the editor opens at its top, by what stands in its empty box. */
    async fillIn(placeholder: string, words: string): Promise<void> {
        const input = this.page.locator(`.quick-input-widget input[placeholder="${placeholder}"]`);
        await input.fill(words);
        await this.page.locator('.quick-input-list .monaco-list-row.focused', { hasText: words }).waitFor();
        await input.press('Enter');
    }

    /** Gives the path that the editor asks for, in the dialog of an editor in a browser. */
    async path(path: string): Promise<void> {
        const input = this.page.locator('.quick-input-widget input[type="text"]');
        const name = path.slice(path.lastIndexOf('/') + 1);
        await this.insist(async () => {
            await input.fill(path, { timeout: TRY });
            await this.page.locator('.quick-input-list .monaco-list-row', { hasText: name }).waitFor({ timeout: TRY });
            await input.press('Enter');
            await this.page.waitForSelector(`.tab.active[data-resource-name="${name}"]`, { timeout: TRY });
        });
    }

    /** Answers the question that the editor asks at its top. */
    async answer(question: string, words: string): Promise<void> {
        const asked = this.page.locator('.quick-input-widget', { hasText: question });
        await asked.waitFor();
        const input = this.page.locator('.quick-input-widget input[type="text"]');
        await input.fill(words);
        // The answer is held against the language first; until then Enter does nothing.
        await this.insist(async () => {
            if (await asked.isVisible()) {
                await this.press('Enter');
            }
            await asked.waitFor({ state: 'hidden', timeout: TRY });
        });
    }

    // ---------------------------------------------------------------- the text
    /** Puts the cursor at a line and column, both from 1. */
    async goTo(line: number, column: number): Promise<void> {
        const input = this.page.locator('.quick-input-widget input[type="text"]');
        await this.insist(async () => {
            await this.page.keyboard.press('Control+g');
            await input.fill(`:${line}:${column}`, { timeout: TRY });
            await input.press('Enter');
            await this.page.locator('.quick-input-widget').waitFor({ state: 'hidden', timeout: TRY });
            await this.selection(`Ln ${line}, Col ${column}`).waitFor({ timeout: TRY });
        });
    }

    /** Where the cursor is and how much is selected, as the editor says it at its foot. */
    private selection(words: string): Locator {
        return this.page.locator('#status\\.editor\\.selection', { hasText: words });
    }

    /** Puts the cursor into the first line that holds some words, `into` characters after they begin. */
    async goToWords(words: string, into = 0): Promise<void> {
        const [line, column] = await this.place(words);
        await this.goTo(line, column + into);
    }

    private async place(words: string): Promise<readonly [number, number]> {
        const seen = await this.until(
            `${words} in sight`,
            async () => (await this.visibleLines()).find(([, text]) => text.includes(words)),
            (line) => line !== undefined,
        );
        const [line, text] = seen!;
        return [line, text.indexOf(words) + 1];
    }

    /** The lines in sight by their numbers. */
    async visibleLines(): Promise<readonly (readonly [number, string])[]> {
        return this.page.evaluate(visibleLines);
    }

    async text(): Promise<string> {
        return (await this.visibleLines()).map(([, line]) => line).join('\n');
    }

    async type(words: string): Promise<void> {
        await this.page.keyboard.type(words, { delay: 15 });
    }

    async press(key: string, times = 1): Promise<void> {
        for (let time = 0; time < times; time++) {
            await this.page.keyboard.press(key);
        }
    }

    /**
     * Types a line that ends with `{`. The editor closes the block, unless it is still busy colouring the lines before; then
     * a person sees that, and closes it.
     */
    async openBlock(line: number, words: string): Promise<void> {
        await this.type(words);
        // Figures that the editor shows within the line are not of the text.
        const typed = await this.until(
            `A block in line ${line}`,
            async () => (await this.visibleLines()).find(([number]) => number === line)?.[1] ?? '',
            (text) => text.includes('{'),
        );
        if (!typed.includes('{}')) {
            await this.type('}');
            await this.press('ArrowLeft');
        }
    }

    /** Goes behind the `}` of the block around the cursor, in the line below; a list that opened meanwhile would take the key. */
    async leaveBlock(line: number): Promise<void> {
        const proposals = this.page.locator('.suggest-widget.visible');
        await this.insist(async () => {
            if (await proposals.isVisible()) {
                await this.press('Escape');
            }
            await this.press('ArrowDown');
            await this.selection(`Ln ${line}, Col`).waitFor({ timeout: TRY });
        });
        await this.press('End');
    }

    /** Replaces words in sight by others, by selecting them and typing. */
    async replace(words: string, by: string): Promise<void> {
        await this.goToWords(words);
        await this.press('Shift+ArrowRight', words.length);
        await this.selection(`(${words.length} selected)`).waitFor();
        if (by === '') {
            await this.press('Delete');
        } else {
            await this.page.keyboard.insertText(by);
        }
    }

    async save(): Promise<void> {
        await this.page.locator('.tab.active.dirty').waitFor();
        await this.press('Control+s');
        await this.page.locator('.tab.active:not(.dirty)').waitFor();
    }

    // ---------------------------------------------------------------- what is found
    /** The words in sight that are underlined, read from the picture. */
    async underlined(): Promise<readonly Shown[]> {
        return this.page.evaluate(underlined);
    }

    /** The colour of words in sight, and how it stands out from what is behind them (1 to 21). */
    async colourOf(words: string): Promise<{ readonly ink: string; readonly contrast: number }> {
        return this.page.evaluate(colourOf, words);
    }

    /** Waits until what is underlined satisfies. */
    async waitForUnderlined(satisfies: (shown: readonly Shown[]) => boolean): Promise<readonly Shown[]> {
        return this.until('What is underlined', () => this.underlined(), satisfies);
    }

    /** Waits until the editor lists no problem of any file of the folder. */
    async waitForNoProblems(): Promise<void> {
        await this.run('Problems: Focus on Problems View');
        await this.page
            .locator('.markers-panel', { hasText: 'No problems have been detected in the workspace.' })
            .waitFor();
    }

    /** The problems that the editor lists, once they satisfy. */
    async problems(satisfies: (rows: readonly string[]) => boolean): Promise<readonly string[]> {
        await this.run('Problems: Focus on Problems View');
        const rows = this.page.locator('.markers-panel .monaco-list-row');
        const seen = () =>
            rows.evaluateAll((all) => all.map((row) => (row as { ariaLabel: string | null }).ariaLabel ?? ''));
        return this.until('What is listed', seen, satisfies);
    }

    /** What the pointer is told over words in sight, once `expected` is among it: the editor asks several who know. */
    async hover(words: string, expected: string): Promise<string> {
        const hover = this.page.locator('.monaco-hover:visible .hover-contents');
        return this.insist(async () => {
            await this.press('Escape');
            await this.goToWords(words, 1);
            await this.press('Control+k');
            await this.press('Control+i');
            await hover.filter({ hasText: expected }).first().waitFor({ timeout: TRY });
            return (await hover.allInnerTexts()).join('\n').replaceAll('\u00a0', ' ');
        });
    }

    /** Waits until a picture of the hover in sight is drawn, by the words that stand for it, as large as it is and no larger than the hover. */
    async drawnInHover(words: string): Promise<void> {
        const image = this.page.locator(`.monaco-hover:visible img[alt="${words}"]`).first();
        await image.waitFor();
        await this.until(
            'The picture in the hover',
            () => image.evaluate(drawnImage),
            ({ isDrawn, isCut }) => isDrawn && !isCut,
        );
    }

    // ---------------------------------------------------------------- lists that open over the text
    /** Opens the light bulb's menu at the cursor, or another list of what can be done. @returns its titles */
    async fixes(keys = 'Control+.'): Promise<readonly string[]> {
        const rows = this.page.locator('.action-widget .monaco-list-row.action');
        return this.insist(async () => {
            await this.press(keys);
            await rows.first().waitFor({ timeout: TRY });
            // The editor also looks by itself a moment after the cursor has moved, and then closes what was asked for.
            await this.page.waitForTimeout(700);
            const titles = (await rows.allInnerTexts()).map((text) => text.trim());
            if (titles.length === 0) {
                throw new Error('The list of what can be done closed again.');
            }
            return titles;
        });
    }

    /** Takes a title of the light bulb's menu. */
    async choose(title: string): Promise<void> {
        const focused = this.page.locator('.action-widget .monaco-list-row.action.focused');
        for (let step = 0; step < 30; step++) {
            if ((await focused.innerText()).trim().startsWith(title)) {
                await this.press('Enter');
                return;
            }
            await this.press('ArrowDown');
        }
        throw new Error(`There is no ${title}`);
    }

    /** The proposals in sight, once the first is as expected. */
    async proposals(first: string): Promise<readonly string[]> {
        const labels = this.page.locator('.suggest-widget.visible .monaco-list-row .label-name');
        return this.until(
            'The first proposal',
            () => labels.allInnerTexts(),
            ([label]) => label === first,
        );
    }

    /**
     * Takes a proposal by its label, asking for proposals where it is not in sight. Keys that come faster than answers leave
     * the word before the cursor with the proposals of the word before it, until they are closed and asked for again.
     */
    async accept(label: string): Promise<void> {
        const widget = this.page.locator('.suggest-widget.visible');
        const row = widget
            .locator('.monaco-list-row')
            .filter({ has: this.page.locator('.label-name').getByText(label, { exact: true }) });
        await this.insist(async () => {
            if (!(await appears(row.first()))) {
                if (await widget.isVisible()) {
                    await this.press('Escape');
                }
                await this.press('Control+Space');
            }
            await row.first().click({ timeout: TRY });
        });
        await widget.waitFor({ state: 'hidden' });
    }

    /** Deletes whole lines, from the one that holds some words. */
    async cutLines(words: string, lines: number): Promise<void> {
        const [line] = await this.place(words);
        await this.goTo(line, 1);
        await this.press('Shift+ArrowDown', lines);
        await this.press('Delete');
    }

    /** The lines of figures that stand above the text's own. */
    async lenses(): Promise<readonly string[]> {
        return this.page.locator('.editor-instance .codelens-decoration').allInnerTexts();
    }

    notice(words: string): Locator {
        return this.page.locator('.notifications-toasts .notification-list-item', { hasText: words });
    }
}

/** Whether it comes in sight while a person would wait for it. */
function appears(what: Locator): Promise<boolean> {
    return what.waitFor({ timeout: SHORT }).then(
        () => true,
        () => false,
    );
}
