// Read from a panel's page as it is drawn. Each function is sent to the browser by itself, so it uses nothing outside.

export function faintWords(body) {
    // The contrast of the web's accessibility guidelines (WCAG 2.1, relative luminance); 4.5 is what they ask of words (1.4.3).
    const luminance = (colour) =>
        colour
            .slice(0, 3)
            .map((channel) => channel / 255)
            .map((channel) => (channel <= 0.03928 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4))
            .reduce((sum, channel, index) => sum + channel * [0.2126, 0.7152, 0.0722][index], 0);
    // A mixed colour is told as `color(srgb …)`, in shares of one.
    const figures = (colour) =>
        colour
            .match(/[\d.]+/g)
            .map(Number)
            .map((figure, index) => (colour.startsWith('color(') && index < 3 ? figure * 255 : figure));
    const ground = (part) => {
        for (let at = part; at; at = at.parentElement) {
            const colour = figures(getComputedStyle(at).backgroundColor);
            if (colour.length === 3 || colour[3] > 0.5) {
                return colour;
            }
        }
        return figures(getComputedStyle(body).backgroundColor);
    };
    const said = [...body.querySelectorAll('*')].filter(
        (part) =>
            part.checkVisibility() &&
            !part.matches('title, desc, option, :disabled') &&
            [...part.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== ''),
    );
    return said.flatMap((part) => {
        const inDrawing = part.ownerSVGElement;
        const ink = figures(getComputedStyle(part)[inDrawing ? 'fill' : 'color']);
        const paper = inDrawing ? figures(getComputedStyle(inDrawing.querySelector('.paper')).fill) : ground(part);
        const [lighter, darker] = [luminance(ink), luminance(paper)].sort((a, b) => b - a);
        const contrast = (lighter + 0.05) / (darker + 0.05);
        return contrast < 4.5 ? [`${part.textContent}: ${contrast.toFixed(1)}`] : [];
    });
}

export function widerThanPage(body) {
    const width = document.documentElement.clientWidth;
    // Pictures and tables scroll in boxes of their own.
    const outside = [...body.querySelectorAll('*')].filter((part) => !part.closest('.picture, .list'));
    return outside
        .filter((part) => part.getBoundingClientRect().right > width + 1)
        .map((part) => part.outerHTML.slice(0, 80));
}

export function scrolledAside(boxes) {
    return boxes.filter((box) => box.scrollWidth > box.clientWidth + 1).map((box) => box.className);
}

export function smallestWords(picture) {
    // As they are seen: the size they are written in times that of the picture.
    const sizes = [...picture.querySelectorAll('text')].map(
        (words) => parseFloat(getComputedStyle(words).fontSize) * words.getScreenCTM().a,
    );
    return Math.min(...sizes);
}
