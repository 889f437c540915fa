import { join } from 'node:path';
import { chromium, type Browser, type Locator, type Page } from 'playwright-core';
import { ARTEFACTS } from './artefacts.js';

const BROWSER = [
    ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'],
    ...['--disable-background-networking', '--disable-component-update'],
    // This machine only.
    '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];

/** A finding as the editor shows it. */
export interface Shown {
    readonly severity: 'error' | 'warning' | 'info' | 'hint';
    /** The words that are underlined. */
    readonly words: string;
}

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
        await this.page.keyboard.press('F1');
        const input = this.page.locator('.quick-input-widget input[type="text"]');
        await input.waitFor();
        await input.fill(`>${title}`);
        await this.page
            .locator('.quick-input-list .monaco-list-row')
            .filter({ has: this.page.getByText(title, { exact: true }) })
            .first()
            .click();
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
        return this.page.evaluate(() => {
            const editor = document.querySelector('.editor-instance')!;
            const byTop = (selector: string) =>
                [...editor.querySelectorAll<HTMLElement>(selector)]
                    .map((element) => ({ top: parseFloat(element.style.top), element }))
                    .sort((a, b) => a.top - b.top);
            const numbers = byTop('.margin-view-overlays > div')
                .map(({ element }) => Number(element.querySelector('.line-numbers')?.textContent))
                .filter((number) => number > 0);
            const lines = byTop('.view-lines > .view-line').map(({ element }) =>
                (element.textContent ?? '').replaceAll('\u00a0', ' '),
            );
            return lines.map((text, index) => [numbers[0]! + index, text] as const);
        });
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
    /** The words in sight that are underlined, read from the picture: what stands over each squiggle. */
    async underlined(): Promise<readonly Shown[]> {
        return this.page.evaluate(() => {
            const shown: Shown[] = [];
            const lines = [...document.querySelectorAll('.editor-instance .view-lines > .view-line')];
            const wordsOver = (squiggle: DOMRect): string => {
                let words = '';
                for (const line of lines) {
                    const box = line.getBoundingClientRect();
                    if (squiggle.top < box.top - 2 || squiggle.top > box.bottom - 2) {
                        continue;
                    }
                    const texts = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
                    for (let text = texts.nextNode(); text; text = texts.nextNode()) {
                        for (let index = 0; index < text.textContent!.length; index++) {
                            const range = document.createRange();
                            range.setStart(text, index);
                            range.setEnd(text, index + 1);
                            const { left, right } = range.getBoundingClientRect();
                            const middle = (left + right) / 2;
                            words += middle > squiggle.left && middle < squiggle.right ? text.textContent![index] : '';
                        }
                    }
                }
                return words.replaceAll('\u00a0', ' ');
            };
            for (const severity of ['error', 'warning', 'info', 'hint'] as const) {
                for (const squiggle of document.querySelectorAll(`.editor-instance .squiggly-${severity}`)) {
                    shown.push({ severity, words: wordsOver(squiggle.getBoundingClientRect()) });
                }
            }
            return shown;
        });
    }

    /** The colour of words in sight, and how it stands out from what is behind them (1 to 21). */
    async colourOf(words: string): Promise<{ readonly ink: string; readonly contrast: number }> {
        return this.page.evaluate((wanted) => {
            const parts = [...document.querySelectorAll<HTMLElement>('.editor-instance .view-line span span')];
            const part = parts.find(({ textContent }) => textContent?.replaceAll('\u00a0', ' ').trim() === wanted);
            if (!part) {
                throw new Error(`${wanted} is not in sight`);
            }
            const channels = (colour: string) => colour.match(/[\d.]+/g)!.map(Number);
            const light = ([red, green, blue]: number[]) =>
                [red!, green!, blue!]
                    .map((channel) => channel / 255)
                    .map((channel) => (channel <= 0.03928 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4))
                    .reduce((sum, channel, index) => sum + channel * [0.2126, 0.7152, 0.0722][index]!, 0);
            const ink = getComputedStyle(part).color;
            const paper = getComputedStyle(document.querySelector('.editor-instance .monaco-editor-background')!);
            const [a, b] = [light(channels(ink)), light(channels(paper.backgroundColor))].sort((x, y) => y - x);
            return { ink, contrast: (a! + 0.05) / (b! + 0.05) };
        }, words);
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
        const texts = await rows.evaluateAll((all) => all.map((row) => row.getAttribute('aria-label') ?? ''));
        return texts;
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
    /** Opens the light bulb's menu at the cursor. @returns its titles */
    async fixes(): Promise<readonly string[]> {
        await this.press('Control+.');
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

    notice(words: string): Locator {
        return this.page.locator('.notifications-toasts .notification-list-item', { hasText: words });
    }
}
