/** The path from one file to another as a `use` line writes it. Both are paths of one folder, with forward slashes. */
export function relativePath(from: string, to: string): string {
    const here = from.split('/').slice(0, -1);
    const there = to.split('/');
    const shared = here.findIndex((part, index) => part !== there[index]);
    const common = shared < 0 ? here.length : shared;
    return [...here.slice(common).map(() => '..'), ...there.slice(common)].join('/');
}
