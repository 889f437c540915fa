/** A list to be dealt out: so many of each item, in order. */
export type Dealt<Item> = readonly { readonly item: Item; readonly count: number }[];

/**
 * Deals `guests` guests the items of every list in order, and tells each run of guests who get the same of all lists.
 * Where a list is shorter than the guests, the last get nothing of it.
 * @param tell one item a list, and how many guests in a row get exactly these; the runs add up to `guests`
 */
export function dealInOrder<Item>(
    guests: number,
    lists: readonly Dealt<Item>[],
    tell: (items: (Item | undefined)[], count: number) => void,
): void {
    const ends = lists.map((list) => {
        let end = 0;
        return list.map(({ item, count }) => ({ item, end: (end += count) }));
    });
    const breaks = [...new Set([guests, ...ends.flatMap((list) => list.map(({ end }) => end))])]
        .filter((end) => end > 0 && end <= guests)
        .toSorted((a, b) => a - b);
    let start = 0;
    for (const end of breaks) {
        const from = start;
        tell(
            ends.map((list) => list.find((each) => each.end > from)?.item),
            end - start,
        );
        start = end;
    }
}
