import type { Next } from './next-words.js';

/** A block to fill in, as an editor's snippet: `${1:words}` are the places to go through. */
export type BlockSnippet = Begins & {
    readonly label: string;
    readonly about: string;
    readonly body: string;
};

/** A word, where the language lets that stand, or the figure of a rule of the grammar. */
type Begins =
    { readonly word: string; readonly figureOf?: undefined } | { readonly word?: undefined; readonly figureOf: string };

/**
 * Offered beside the bare word, for clients that take snippets, and by name in the extension's list of snippets. A test reads
 * each of them as it stands.
 */
export const BLOCK_SNIPPETS: readonly BlockSnippet[] = [
    {
        word: 'event',
        label: 'event, a new one',
        about: 'An event: when, where, and who comes.',
        body: `event "\${1:Lantern night supper}" {
    date \${2:2026-10-17}
    zone \${3:America/Halifax}
    seated \${4:19:00}
    guests \${5:84} {
        \${6:6 vegetarian}
    }
}`,
    },
    {
        figureOf: 'GuestRow',
        label: 'guests with a diet',
        about: 'How many of the guests eat otherwise, and how.',
        body: '${1:2} ${2:vegetarian}',
    },
    {
        figureOf: 'GuestRow',
        label: 'guests without an allergen',
        about: 'How many of the guests must be kept from something, and from what.',
        body: '${1:1} without ${2:peanut}',
    },
    {
        figureOf: 'GuestRow',
        label: 'children, how many',
        about: 'How many of the guests are children.',
        body: '${1:4} children',
    },
    {
        word: 'menu',
        label: 'menu, of courses',
        about: 'A menu, its courses in the order served.',
        body: `menu {
    $0
}`,
    },
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
        word: 'room',
        label: 'room, with tables',
        about: 'A room and its tables.',
        body: `room "\${1:Long gallery}" \${2:18} m by \${3:11} m {
    at \${4:20} °C
    table \${5:T1} to \${6:T9}: round 60 inch, \${7:8} seats
}`,
    },
    {
        word: 'table',
        label: 'table, a range',
        about: 'Tables of one shape and size.',
        body: 'table ${1:T1} to ${2:T9}: ${3|round,rectangle,square|} ${4:60} ${5|inch,cm|}, ${6:8} seats',
    },
    {
        word: 'team',
        label: 'team, by role',
        about: 'Who works the evening.',
        body: `team {
    captain \${1:1}
    servers \${2:7}
    runners \${3:3}
}`,
    },
    {
        word: 'house',
        label: 'house, what it owns',
        about: 'What the house owns and how it lays.',
        body: `house "\${1:Saltmarsh Hall}" {
    local code \${2:us-model}
    own \${3:110} \${4:dinner-fork}, \${5:110} \${6:dinner-knife}
    spare \${7:5} %
    laying {
        limit: \${8:3} per side
    }
}`,
    },
    {
        word: 'waive',
        label: 'waive, with a reason',
        about: 'Silences a rule in this block, with the reason.',
        body: 'waive ${1:three-per-side} because "${2:agreed with the host}"',
    },
];

/** Those whose first word, or whose first figure, may stand next. */
export function snippetsFor({ phrases, figuresOf }: Pick<Next, 'phrases' | 'figuresOf'>): readonly BlockSnippet[] {
    return BLOCK_SNIPPETS.filter(({ word, figureOf }) =>
        figureOf !== undefined
            ? figuresOf.has(figureOf)
            : phrases.some((phrase) => phrase === word || phrase.startsWith(`${word} `)),
    );
}
