import { paired, type Change, type Subject } from './change.js';
import type { Said } from './said.js';

/** What a plan may say of a thing, by the words that lead to it: `cooked to` → `74 °C`. */
export type Facts<T> = Readonly<Record<string, (thing: T) => Said | undefined>>;

/** A thing that has facts. */
export interface Thing<T> {
    readonly key: string;
    /** How people call it: `the sauce of \`Lamb\``; empty where its facts say so themselves. */
    readonly called: string;
    readonly of: T;
}

/** Which facts of a thing are stated otherwise, no longer, or now. */
export function changedFacts<T>(subject: Subject, facts: Facts<T>, was: Thing<T>, is: Thing<T>): Change[] {
    return Object.entries(facts).flatMap(([name, read]): Change[] => {
        const [old, now] = [read(was.of), read(is.of)];
        return old?.means === now?.means
            ? []
            : [
                  {
                      subject,
                      key: `${is.key}: ${name}`,
                      text: `${is.called === '' ? '' : `${is.called}: `}${tellFact(name, old, now)}`,
                  },
              ];
    });
}

function tellFact(name: string, old: Said | undefined, now: Said | undefined): string {
    const told = (fact: Said): string => (fact.text === '' ? name : `${name} ${fact.text}`.trim());
    if (old && now) {
        return `${told(now)} instead of ${old.text}`;
    }
    if (now) {
        return `now ${told(now)}`;
    }
    return old!.text === '' ? `no longer ${name}` : `${told(old!)} is no longer stated`;
}

/**
 * The same of many things, each by its key. What is new or gone is told as a whole.
 * @param isNew what is said of a thing that is new, behind its name, as `is new` or `: 30`; nothing where another subject tells it
 */
export function changedThings<T>(
    subject: Subject,
    facts: Facts<T>,
    before: readonly Thing<T>[],
    after: readonly Thing<T>[],
    isNew: ((thing: T) => string | undefined) | undefined = () => 'is new',
    isGone = 'is gone',
): Change[] {
    return paired(before, after, ({ key }) => key).flatMap(({ key, was, is }): Change[] => {
        if (was && is) {
            return changedFacts(subject, facts, { ...was, key }, { ...is, key });
        }
        const news = is ? isNew(is.of) : isGone;
        const gap = news?.startsWith(':') ? '' : ' ';
        return news === undefined || news === '' ? [] : [{ subject, key, text: `${(is ?? was)!.called}${gap}${news}` }];
    });
}
