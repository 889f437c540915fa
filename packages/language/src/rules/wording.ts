/** How lists, counts and figures read in a message. */

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[], joint: 'and' | 'or' = 'and'): string {
    return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${joint} ${words.at(-1)!}`;
}

/** The user's own name, as a message shows it. */
export function quoted(name: string): string {
    return `\`${name}\``;
}

/** What may have been meant: names that are near. */
export function didYouMean(near: readonly string[]): string {
    return `Did you mean ${listed(near.map(quoted), 'or')}?`;
}

/** `1 guest`, `6 guests`. */
export function counted(count: number, noun: string, plural = `${noun}s`): string {
    return `${count} ${count === 1 ? noun : plural}`;
}

/** More than one of a piece, as cupboards call them: `soup spoons`, `knives`, `glasses`, `round cloths 90`. */
export function several(noun: string): string {
    const [, thing, size] = /^(\D+) (\d.*)$/.exec(noun) ?? [];
    if (thing !== undefined) {
        return `${several(thing)} ${size}`;
    }
    if (noun.includes(' and ')) {
        return `${noun} sets`;
    }
    if (/kni(fe)$/.test(noun)) {
        return noun.replace(/fe$/, 'ves');
    }
    // Tongs are many already.
    return /[^s]s$/.test(noun) ? noun : /(ss|x|ch|sh)$/.test(noun) ? `${noun}es` : `${noun}s`;
}

/** `1 guest has`, `6 guests have`: the verb that goes with the count. */
export function agreeing(count: number, singular: string, plural: string): string {
    return count === 1 ? singular : plural;
}

/** A name that stands in a text without quotes, or with them where it needs them. */
export function asName(name: string): string {
    return /^[A-Za-z_\u00C0-\u024F][\w\u00C0-\u024F\u0300-\u036F]*(-[\w\u00C0-\u024F\u0300-\u036F]+)*$/.test(name)
        ? name
        : `"${name}"`;
}
