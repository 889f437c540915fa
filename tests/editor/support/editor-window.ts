import { join } from 'node:path';
import { chromium, type Browser, type Locator, type Page } from 'playwright-core';
import { ARTEFACTS } from './artefacts.js';
import { colourOf, underlined, visibleLines, type Shown } from './in-page.mjs';

export type { Shown };

const BROWSER = [
    ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'],
    ...['--disable-background-networking', '--disable-component-update'],
    // This machine only.
    '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];

/** One window of the editor, used as a person uses it: with keys, the mouse and what is to be seen. */
export class EditorWindow {
    private constructor(
        private readonly browser: Browser,
        readonly page: Page,
    ) {}

    static async open(address: string): Promise<EditorWindow> {
        const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: BROWSER });
        const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
        const window = new EditorWindow(browser, page);
        await page.goto(address);
        await page.waitForSelector('.monaco-workbench', { timeout: 60_000 });
        return window;
    }

    async close(): Promise<void> {
        await this.browser.close();
    }

    async picture(name: string): Promise<void> {
        await this.page.screenshot({ path: join(ARTEFACTS, `${name}.png`) });
    }

    // ---------------------------------------------------------------- files and commands
    async openFile(name: string): Promise<void> {
        const row = this.page.locator(`.explorer-folders-view .monaco-list-row[aria-label^="${name}"]`);
        await row.first().dblclick();
        await this.page.waitForSelector(`.tab.active[data-resource-name="${name}"]`);
        await this.page.waitForSelector('.editor-instance .view-line');
    }

    /** Waits until the language server knows the plan in sight. */
    async ready(): Promise<void> {
        await this.page.locator('[id="underliner.underliner-vscode.underliner.summary"]').waitFor();
    }

    /** Runs a command by its title, as the command palette lists it. */
    async run(title: string): Promise<void> {
        const input = this.page.locator('.quick-input-widget input[type="text"]');
        const row = this.page
            .locator('.quick-input-list .monaco-list-row')
            .filter({ has: this.page.getByText(title, { exact: true }) });
        // Whatever else takes the keyboard closes the palette.
        for (let attempt = 1; ; attempt++) {
            try {
                await this.page.keyboard.press('F1');
                await input.fill(`>${title}`, { timeout: 10_000 });
                await row.first().click({ timeout: 10_000 });
                return;
            } catch (failure) {
                if (attempt === 3) {
                    throw failure;
                }
            }
        }
    }

    /** Picks from a list that the editor opens at its top, by what stands in its empty box. */
    async fillIn(placeholder: string, words: string): Promise<void> {
        const input = this.page.locator(`.quick-input-widget input[placeholder="${placeholder}"]`);
        await input.fill(words);
        await this.page.locator('.quick-input-list .monaco-list-row.focused', { hasText: words }).waitFor();
        await input.press('Enter');
    }

    /** Answers the question that the editor asks at its top. */
    async answer(question: string, words: string): Promise<void> {
        await this.page.locator('.quick-input-widget', { hasText: question }).waitFor();
        const input = this.page.locator('.quick-input-widget input[type="text"]');
        await input.fill(words);
        await this.page.waitForTimeout(300);
        await input.press('Enter');
    }

    // ---------------------------------------------------------------- the text
    /** Puts the cursor at a line and column, both from 1. */
    async goTo(line: number, column: number): Promise<void> {
        await this.page.keyboard.press('Control+g');
        const input = this.page.locator('.quick-input-widget input[type="text"]');
        await input.waitFor();
        await input.fill(`:${line}:${column}`);
        await input.press('Enter');
        await this.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
        await this.page.locator('#status\\.editor\\.selection', { hasText: `Ln ${line}, Col ${column}` }).waitFor();
    }

    /** Puts the cursor into the first line that holds some words, `into` characters after they begin. */
    async goToWords(words: string, into = 0): Promise<void> {
        const [line, column] = await this.place(words);
        await this.goTo(line, column + into);
    }

    private async place(words: string): Promise<readonly [number, number]> {
        for (const [line, text] of await this.visibleLines()) {
            const found = text.indexOf(words);
            if (found >= 0) {
                return [line, found + 1];
            }
        }
        throw new Error(`${words} is not in sight`);
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

    /** Replaces words in sight by others, by selecting them and typing. */
    async replace(words: string, by: string): Promise<void> {
        await this.goToWords(words);
        await this.press('Shift+ArrowRight', words.length);
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
        let shown: readonly Shown[] = [];
        for (let wait = 0; wait < 150; wait++) {
            shown = await this.underlined();
            if (satisfies(shown)) {
                return shown;
            }
            await this.page.waitForTimeout(100);
        }
        throw new Error(`What is underlined did not become so: ${JSON.stringify(shown)}`);
    }

    /** The problems that the editor lists, with the file each is in. */
    async problems(): Promise<readonly string[]> {
        await this.run('Problems: Focus on Problems View');
        await this.page.waitForSelector('.markers-panel');
        const rows = this.page.locator('.markers-panel .monaco-list-row');
        return Promise.all((await rows.all()).map(async (row) => (await row.getAttribute('aria-label')) ?? ''));
    }

    /** What the pointer is told over words in sight. */
    async hover(words: string, into = 1): Promise<string> {
        await this.goToWords(words, into);
        await this.press('Control+k');
        await this.press('Control+i');
        const hover = this.page.locator('.monaco-hover:visible .hover-contents');
        await hover.first().waitFor();
        await this.page.waitForTimeout(500);
        return (await hover.allInnerTexts()).join('\n').replaceAll('\u00a0', ' ');
    }

    // ---------------------------------------------------------------- lists that open over the text
    /** Opens the light bulb's menu at the cursor, or another list of what can be done. @returns its titles */
    async fixes(keys = 'Control+.'): Promise<readonly string[]> {
        // The editor looks by itself a moment after the cursor has moved, and would take the menu's answer for its own.
        await this.page.waitForTimeout(1500);
        await this.press(keys);
        const rows = this.page.locator('.action-widget .monaco-list-row.action');
        await rows.first().waitFor();
        return (await rows.allInnerTexts()).map((text) => text.trim());
    }

    /** Goes down the light bulb's menu to a title and takes it. */
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

    /** The proposals that are in sight. */
    async proposals(): Promise<readonly string[]> {
        const rows = this.page.locator('.suggest-widget.visible .monaco-list-row');
        await rows.first().waitFor();
        const labels = rows.locator('.label-name');
        return labels.allInnerTexts();
    }

    /** The lines of figures that stand above the text's own. */
    async lenses(): Promise<readonly string[]> {
        return this.page.locator('.editor-instance .codelens-decoration').allInnerTexts();
    }

    notice(words: string): Locator {
        return this.page.locator('.notifications-toasts .notification-list-item', { hasText: words });
    }
}
