/** Text of a plan or a rule as Markdown: what stands in back-quotes is code, other marks are only characters. */
export function escaped(text: string): string {
    return text
        .split(/(`[^`]*`)/)
        .map((part) => (part.startsWith('`') ? part : part.replace(/[\\*_<>[\]#|~]/g, '\\$&')))
        .join('');
}

export function code(words: string): string {
    return `\`${words.replaceAll('`', '')}\``;
}
