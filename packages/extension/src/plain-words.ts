/** Words of the server where the editor lays out no Markdown, in its messages and boxes: names stand in quotes. */
export function plainWords(words: string): string {
    return words.replace(/`([^`]+)`/g, '“$1”');
}
