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

/** What a hover says of a thing: its words in the language, what else it is called, then one line after the other. */
export function page(heading: string, called: string | undefined, lines: readonly (string | undefined)[]): string {
    const title = `\`\`\`cover\n${heading}\n\`\`\``;
    const isNews = called !== undefined && !heading.replaceAll('-', ' ').endsWith(` ${called}`);
    return [
        title,
        ...(isNews ? [`*${escaped(called)}*`] : []),
        ...lines.filter((line) => line !== undefined && line !== ''),
    ].join('\n\n');
}

export const sentence = (words: string): string =>
    escaped(`${words[0]?.toUpperCase() ?? ''}${words.slice(1)}${/[.!]$/.test(words) ? '' : '.'}`);

/** Lines one under the other. */
export const bullets = (lines: readonly string[]): string | undefined =>
    lines.length > 0 ? lines.map((line) => `- ${escaped(line)}`).join('\n') : undefined;

/** A drawing inside a page: nothing is fetched, and no HTML is needed. */
export function image(svg: string, words: string): string {
    const bytes = new TextEncoder().encode(svg);
    return `![${escaped(words)}](data:image/svg+xml;base64,${btoa(String.fromCharCode(...bytes))})`;
}

/** The words of a page of ours, for clients that show no Markdown. */
export function inPlainWords(markdown: string): string {
    return markdown
        .replace(/^!\[[^\]]*\]\([^)]*\)\n*/gm, '')
        .replace(/^```.*\n?/gm, '')
        .replace(/^---$/gm, '')
        .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
        .replace(/(?<!\\)\*{1,2}([^*\n]+?)(?<!\\)\*{1,2}/g, '$1')
        .replace(/\\([\\*_<>[\]#|~])/g, '$1')
        .replace(/\n{3,}/g, '\n\n')
        .trim();
}
