import type { Next } from './next-words.js';

/** A block to fill in, as an editor's snippet: `${1:words}` are the places to go through. */
export interface BlockSnippet {
    /** The word that it begins with, where the language lets that stand. */
    readonly word: string;
    readonly label: string;
    readonly about: string;
    readonly body: string;
}

/** Offered beside the bare word, for clients that take snippets. A test reads each of them as it stands. */
export const BLOCK_SNIPPETS: readonly BlockSnippet[] = [
    {
        word: 'course',
        label: 'course, one dish',
        about: 'A course that everyone eats.',
        body: `course \${1:soup} "\${2:Roast squash soup}" {
    served \${3|in,on|} \${4:soup-bowl} at \${5:64} °C
    lasts \${6:15} min
    contains \${7:nothing}
}`,
    },
    {
        word: 'course',
        label: 'course, several dishes',
        about: 'A course in which guests eat different things.',
        body: `course \${1:main} "\${2:Main course}" {
    lasts \${3:35} min
    dish "\${4:Roast chicken}" is \${5:poultry} for the rest {
        served on \${6:dinner-plate} warmed to 62 °C at 63 °C
        cook to 74 °C
        contains \${7:nothing}
    }
    dish "\${8:Mushroom barley}" is \${9:grain-main} for \${10:vegetarian} {
        served on dinner-plate warmed to 62 °C at 63 °C
        contains \${11:barley}
    }
}`,
    },
    {
        word: 'dish',
        label: 'dish, for some',
        about: 'A dish of the course, and who gets it.',
        body: `dish "\${1:Mushroom barley}" is \${2:grain-main} for \${3:vegetarian} {
    served on \${4:dinner-plate} warmed to 62 °C at 63 °C
    contains \${5:nothing}
}`,
    },
    {
        word: 'pour',
        label: 'pour, with a choice',
        about: 'A drink with the course, and what is offered in its place.',
        body: `pour "\${1:Country red}" \${2:4 fl oz} into \${3:red-wine-glass} at \${4:16} °C, is \${5:medium-red-wine} {
    contains \${6:sulphites}
    instead "\${7:Pressed blackcurrant}" \$2, is \${8:juice} { contains nothing }
}`,
    },
    {
        word: 'table',
        label: 'table, a range',
        about: 'Tables of one shape and size.',
        body: 'table ${1:T1} to ${2:T9}: ${3|round,rectangle,square|} ${4:60} ${5|inch,cm|}, ${6:8} seats',
    },
];

/** Those whose word may stand next. */
export function snippetsFor({ phrases }: Pick<Next, 'phrases'>): readonly BlockSnippet[] {
    return BLOCK_SNIPPETS.filter(({ word }) =>
        phrases.some((phrase) => phrase === word || phrase.startsWith(`${word} `)),
    );
}
