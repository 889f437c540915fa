/** The one edit that makes one text the other, without what both begin and end with. */
export function difference(
    before: string,
    after: string,
): { readonly start: number; readonly end: number; readonly text: string } {
    const most = Math.min(before.length, after.length);
    let start = 0;
    while (start < most && before[start] === after[start]) {
        start++;
    }
    let same = 0;
    while (same < most - start && before[before.length - 1 - same] === after[after.length - 1 - same]) {
        same++;
    }
    return { start, end: before.length - same, text: after.slice(start, after.length - same) };
}
