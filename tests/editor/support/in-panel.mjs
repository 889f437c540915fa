// Read from a panel's page as it is drawn. Each function is sent to the browser by itself, so it uses nothing outside.

export function contrastOfWords(words) {
    // The contrast of the web's accessibility guidelines (WCAG 2.1, relative luminance).
    const luminance = (colour) =>
        colour
            .match(/[\d.]+/g)
            .slice(0, 3)
            .map((channel) => Number(channel) / 255)
            .map((channel) => (channel <= 0.03928 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4))
            .reduce((sum, channel, index) => sum + channel * [0.2126, 0.7152, 0.0722][index], 0);
    const paper = words.ownerSVGElement.querySelector('.paper');
    const [lighter, darker] = [words, paper]
        .map((each) => luminance(getComputedStyle(each).fill))
        .sort((a, b) => b - a);
    return (lighter + 0.05) / (darker + 0.05);
}

export function widerThanPage(body) {
    const width = document.documentElement.clientWidth;
    // Pictures and tables scroll in boxes of their own.
    const outside = [...body.querySelectorAll('*')].filter((part) => !part.closest('.picture, .list'));
    return outside
        .filter((part) => part.getBoundingClientRect().right > width + 1)
        .map((part) => part.outerHTML.slice(0, 80));
}

export function smallestWords(picture) {
    // As they are seen: the size they are written in times that of the picture.
    const sizes = [...picture.querySelectorAll('text')].map(
        (words) => parseFloat(getComputedStyle(words).fontSize) * words.getScreenCTM().a,
    );
    return Math.min(...sizes);
}
