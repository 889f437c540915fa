/**
 * Keeps the last answers of a calculation whose input is plain data, so that a change elsewhere in the plan does not
 * repeat it. Give it values without origins: a line added above must not make the input new.
 */
export function remember<Input, Output>(calculate: (input: Input) => Output, kept = 8): (input: Input) => Output {
    const known = new Map<string, Output>();
    return (input) => {
        const key = JSON.stringify(input);
        const held = known.get(key);
        if (held !== undefined) {
            // To the end: the one asked for longest ago goes first.
            known.delete(key);
            known.set(key, held);
            return held;
        }
        const made = calculate(input);
        known.set(key, made);
        if (known.size > kept) {
            known.delete(known.keys().next().value!);
        }
        return made;
    };
}

/**
 * The value from before where another says the same, so that all that was worked out from it is kept. Plain data without
 * origins, as above.
 */
export function sameAgain<T>(): (value: T) => T {
    return remember((value: T) => value);
}
