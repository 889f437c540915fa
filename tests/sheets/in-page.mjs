/* global document, getComputedStyle */

/** Runs in the page: what can be measured of it. */
export function lookOfPage() {
    const all = [...document.body.querySelectorAll('*')];
    const said = (element) => `${element.tagName}: ${(element.textContent ?? '').slice(0, 40)}`;
    const inPicture = (element) => element.closest('svg') !== null;
    const isWord = (element) => !inPicture(element) || element.tagName === 'text';
    const lettered = all
        .filter(isWord)
        .filter((element) =>
            [...element.childNodes].some((node) => node.nodeType === 3 && (node.textContent ?? '').trim() !== ''),
        );
    /** Pixels to one unit of the picture it stands in. */
    const scaleOf = (element) => {
        const svg = element.closest('svg');
        return svg?.viewBox.baseVal?.width ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
    };
    const light = (colour) => {
        const [red = 0, green = 0, blue = 0] = (colour.match(/[\d.]+/g) ?? []).map(Number).map((part) => {
            const share = part / 255;
            return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
        });
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    return {
        tooWide: [document.documentElement, ...all]
            .filter((element) => !inPicture(element) && element.clientWidth > 0)
            .filter((element) => element.scrollWidth > element.clientWidth + 1)
            .map(said),
        small: lettered
            .filter((element) => parseFloat(getComputedStyle(element).fontSize) * scaleOf(element) < 15.99)
            .map(said),
        // Every page is white.
        pale: lettered
            .filter((element) => {
                const style = getComputedStyle(element);
                const ink = inPicture(element) ? style.fill : style.color;
                return (1 + 0.05) / (light(ink) + 0.05) < 7;
            })
            .map(said),
        outside: [...document.querySelectorAll('svg text')]
            .filter((text) => {
                const [own, svg] = [text.getBoundingClientRect(), text.closest('svg').getBoundingClientRect()];
                return (
                    own.left < svg.left - 1 ||
                    own.right > svg.right + 1 ||
                    own.top < svg.top - 1 ||
                    own.bottom > svg.bottom + 1
                );
            })
            .map(said),
        headings: [...document.querySelectorAll('h1, h2, h3')].map(({ tagName }) => Number(tagName[1])),
        stops: document.querySelectorAll('a, button, input, [tabindex]').length,
        fetched: document.querySelectorAll('script, link, img, iframe, [src], [href]').length,
    };
}
