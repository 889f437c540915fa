// Read from the page as it is drawn. Each function is sent to the browser by itself, so it uses nothing outside.

export function visibleLines() {
    const editor = document.querySelector('.editor-instance');
    const byTop = (selector) =>
        [...editor.querySelectorAll(selector)]
            .map((element) => ({ top: parseFloat(element.style.top), element }))
            .sort((a, b) => a.top - b.top);
    const numbers = byTop('.margin-view-overlays > div')
        .map(({ element }) => Number(element.querySelector('.line-numbers')?.textContent))
        .filter((number) => number > 0);
    const lines = byTop('.view-lines > .view-line').map(({ element }) => element.textContent.replaceAll('\u00a0', ' '));
    return lines.map((text, index) => [numbers[0] + index, text]);
}

export function underlined() {
    const lines = [...document.querySelectorAll('.editor-instance .view-lines > .view-line')];
    const wordsOver = (squiggle) => {
        let words = '';
        for (const line of lines) {
            const box = line.getBoundingClientRect();
            if (squiggle.top < box.top - 2 || squiggle.top > box.bottom - 2) {
                continue;
            }
            const texts = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
            for (let text = texts.nextNode(); text; text = texts.nextNode()) {
                for (let index = 0; index < text.textContent.length; index++) {
                    const range = document.createRange();
                    range.setStart(text, index);
                    range.setEnd(text, index + 1);
                    const { left, right } = range.getBoundingClientRect();
                    const middle = (left + right) / 2;
                    words += middle > squiggle.left && middle < squiggle.right ? text.textContent[index] : '';
                }
            }
        }
        return words.replaceAll('\u00a0', ' ');
    };
    return ['error', 'warning', 'info', 'hint'].flatMap((severity) =>
        [...document.querySelectorAll(`.editor-instance .squiggly-${severity}`)].map((squiggle) => ({
            severity,
            words: wordsOver(squiggle.getBoundingClientRect()),
        })),
    );
}

export function colourOf(words) {
    const parts = [...document.querySelectorAll('.editor-instance .view-line span span')];
    const part = parts.find(({ textContent }) => textContent.replaceAll('\u00a0', ' ').trim() === words);
    if (!part) {
        throw new Error(`${words} is not in sight`);
    }
    const channels = (colour) =>
        colour
            .match(/[\d.]+/g)
            .slice(0, 3)
            .map(Number);
    // The contrast of the web's accessibility guidelines (WCAG 2.1, relative luminance).
    const luminance = (colour) =>
        channels(colour)
            .map((channel) => channel / 255)
            .map((channel) => (channel <= 0.03928 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4))
            .reduce((sum, channel, index) => sum + channel * [0.2126, 0.7152, 0.0722][index], 0);
    const ink = getComputedStyle(part).color;
    const paper = getComputedStyle(
        document.querySelector('.editor-instance .monaco-editor-background'),
    ).backgroundColor;
    const [lighter, darker] = [luminance(ink), luminance(paper)].sort((a, b) => b - a);
    return { ink, contrast: (lighter + 0.05) / (darker + 0.05) };
}

export function drawnImage(image) {
    const box = image.getBoundingClientRect();
    const around = image.closest('.monaco-hover').getBoundingClientRect();
    return {
        // A picture that is not taken as one has no size of its own.
        isDrawn: image.complete && image.naturalWidth > 0 && box.width > 0 && box.height > 0,
        isCut: box.right > around.right + 1 || box.left < around.left - 1,
    };
}
