import { isAlike } from '../plan/alike.js';

/**
 * Keeps the last answers of a calculation whose input is plain data, so that a change elsewhere in the plan does not
 * repeat it. Give it values without origins: a place is like itself alone, so an input with one is new at every key.
 */
export function remember<Input, Output>(calculate: (input: Input) => Output, kept = 8): (input: Input) => Output {
    /** The one asked for longest ago first. */
    const known: { readonly input: Input; readonly output: Output }[] = [];
    return (input) => {
        const held = known.findLastIndex((each) => isAlike(each.input, input));
        const answer = held < 0 ? { input, output: calculate(input) } : known.splice(held, 1)[0]!;
        known.push(answer);
        if (known.length > kept) {
            known.shift();
        }
        return answer.output;
    };
}

/**
 * The value from before where another says the same, so that all that was worked out from it is kept. Plain data without
 * origins, as above.
 */
export function sameAgain<T>(): (value: T) => T {
    return remember((value: T) => value);
}
