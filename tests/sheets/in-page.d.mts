/** How a page looks on paper of so many pixels across. */
export interface Look {
    readonly tooWide: string[];
    readonly small: string[];
    readonly pale: string[];
    readonly outside: string[];
    readonly headings: number[];
    readonly stops: number;
    readonly fetched: number;
}

export function lookOfPage(): Look;
