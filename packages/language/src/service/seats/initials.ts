/** `I. M.` for `Isolde Marrow`: as much of a guest's name as leaves the guest list, whose needs are health data. */
export function initials(name: string): string {
    return name
        .split(/\s+/)
        .filter((word) => word !== '')
        .map((word) => `${[...word][0]}.`)
        .join(' ');
}
