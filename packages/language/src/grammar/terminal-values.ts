/**
 * What a terminal's characters mean. Strings lose their quotes, straight or curly, closed or not; names are compared in
 * Unicode NFC; everything else is kept as written.
 */
export function terminalValue(terminal: string, image: string): string {
    switch (terminal) {
        case 'STRING':
            return image.replace(/^["\u201C\u201D\u201E]/, '').replace(/["\u201C\u201D]$/, '');
        case 'ID':
            return image.normalize('NFC');
        default:
            return image;
    }
}

/** Whether a text or a comment was opened and never closed. */
export function isUnclosed(image: string): boolean {
    return (
        (/^["\u201C\u201D\u201E]/.test(image) && !/.["\u201C\u201D]$/.test(image)) ||
        (image.startsWith('/*') && !(image.length >= 4 && image.endsWith('*/')))
    );
}
