import { CodeActionKind } from 'vscode-languageserver';
import { describe, expect, it } from 'vitest';
import { openPlan } from '../../../../../tests/support/open-plan.js';
import { readText } from '../../plan/read-text.js';
import { applyEdits } from '../fixes.js';
import { refactorings } from './index.js';

/** What can be done at the cursor, and what each leaves of every file. */
function offered(written: string): Record<string, Record<string, string>> {
    const { folder, path, offset } = openPlan(written);
    return Object.fromEntries(
        refactorings({ folder, path, start: offset, end: offset }).map(({ title, edits, creates }) => {
            const changed = [...edits].map(([file, own]) => [file, applyEdits(folder.textOf(file)!, own)] as const);
            const texts = Object.fromEntries([...changed, ...(creates ?? [])]);
            for (const [file, text] of Object.entries(texts)) {
                expect(readText(file, text).syntax, `${title}: ${text}`).toEqual([]);
            }
            return [title, texts];
        }),
    );
}

describe('convert the unit', () => {
    it('of a figure, into what the other half of the world reads', () => {
        const course = (figure: string) => `menu { course soup { served in soup-bowl at ${figure} } }\n`;
        // 147 °F would be 63.9 °C: where 64 °C is the least that the law allows, a figure too low.
        expect(offered(course('6<|>4 °C'))).toEqual({ 'Write `147.2 °F`': { 'plan.cover': course('147.2 °F') } });
        expect(Object.keys(offered(course('13<|>5 °F')))).toEqual(['Write `57.2 °C`']);
        expect(Object.keys(offered('room "R" { table T1: rectangle 9<|>6 inch by 42 inch, 8 seats }'))).toEqual(
            expect.arrayContaining(['Write `2438.4 mm`']),
        );
        expect(offered('menu { course soup { lasts 1<|>5 min } }')['Write `900 s`']).toBeUndefined();
        expect(offered('// 6<|>4 °C\n')).toEqual({});
    });
});

describe('turn a clause into a custom', () => {
    it('sets it in the house that the plan uses', () => {
        const plan = (clause: string) => `//- house.cover
house "Hall" {
    laying {
        limit: 3 per side
    }
}
//- plan.cover
use "house.cover"
menu { course soup { served in soup-bowl ${clause} at 64 °C } }
`;
        expect(offered(plan('war<|>med to 60 °C'))['Make `warmed-to: 60 °C` the custom of the house']).toEqual({
            'plan.cover': 'use "house.cover"\nmenu { course soup { served in soup-bowl warmed at 64 °C } }\n',
            'house.cover':
                'house "Hall" {\n    laying {\n        limit: 3 per side\n        warmed-to: 60 °C\n    }\n}\n',
        });
    });

    it('changes what the house says already', () => {
        const room = `house "Hall" { laying { room-temperature: 20 °C } }

room "Terrace" 8 m by 6 m {
    a<|>t 24 °C
    table A: round 60 inch, 8 seats
}
`;
        expect(offered(room)['Make `room-temperature: 24 °C` the custom of the house']).toEqual({
            'plan.cover': `house "Hall" { laying { room-temperature: 24 °C } }

room "Terrace" 8 m by 6 m {
    table A: round 60 inch, 8 seats
}
`,
        });
    });

    it('is not offered where there is no house', () => {
        expect(Object.keys(offered('menu { course soup { la<|>sts 15 min } }'))).toEqual([]);
    });
});

describe('split a dish off', () => {
    it('makes two dishes of a course, its own clauses and every comment kept', () => {
        const written = `event "Supper" { guests 8 { 2 vegetarian } }

menu {
    course soup "Game soup" {
        // Hot!
        served in soup-bowl warmed to 60 °C at 64 °C
        eaten with soup-spoon
        lasts 15 min // at most
        contains celery
    }<|>
}
`;
        expect(offered(written)['Split off a dish for vegetarian']).toEqual({
            'plan.cover': `event "Supper" { guests 8 { 2 vegetarian } }

menu {
    course soup "Game soup" {
        lasts 15 min // at most
        dish "Game soup" for the rest {
            // Hot!
            served in soup-bowl warmed to 60 °C at 64 °C
            eaten with soup-spoon
            contains celery
        }
        dish "Game soup, vegetarian" for vegetarian {
            served in soup-bowl warmed to 60 °C at 64 °C
            eaten with soup-spoon
        }
    }
}
`,
        });
    });

    it('adds one to those there are, for guests who have none', () => {
        const written = `event "Supper" { guests 8 { 2 vegetarian   1 without milk } }

menu {
    course main {
        dish "Sirloin" is steak for the rest { served on dinner-plate at 58 °C }
        dish "Barley<|>" for vegetarian { served on dinner-plate at 62 °C }
    }
}
`;
        const all = offered(written);
        expect(Object.keys(all)).toEqual(['Split off a dish for guests without milk']);
        expect(all['Split off a dish for guests without milk']!['plan.cover']).toContain(`
        dish "Sirloin, without milk" is steak for guests without milk {
            served on dinner-plate at 58 °C
        }
    }`);
    });

    it('makes no dish for needs that nobody knows', () => {
        const all = offered(`event "Supper" { guests 8 { 2 vegitarian   1 without vegan } }
menu { course soup "Leek" { served in soup-bowl<|> } }
`);
        expect(Object.keys(all).filter((title) => title.startsWith('Split off'))).toEqual([]);
    });

    it('makes no dish of a kind that these guests are kept from', () => {
        const dinner = (menu: string) => `event "Supper" { guests 8 { 2 vegetarian   1 without milk } }

menu {
${menu}
}
`;
        const whole = offered(
            dinner(`    course main "Roast<|> chicken" is poultry {
        served on dinner-plate at 63 °C // Sage.
    }`),
        );
        expect(whole['Split off a dish for vegetarian']!['plan.cover']).toBe(
            dinner(`    course main "Roast chicken" is poultry {
        dish "Roast chicken" for the rest {
            served on dinner-plate at 63 °C // Sage.
        }
        dish "Roast chicken, vegetarian" is main for vegetarian {
            served on dinner-plate at 63 °C
        }
    }`),
        );
        expect(whole['Split off a dish for guests without milk']!['plan.cover']).toContain(
            '"Roast chicken" is poultry {',
        );
        const dishes = offered(
            dinner(`    course main {
        dish "Roast<|> chicken" is poultry for the rest { served on dinner-plate at 63 °C }
    }`),
        );
        expect(dishes['Split off a dish for vegetarian']!['plan.cover']).toContain(
            'dish "Roast chicken, vegetarian" is main for vegetarian {',
        );
    });

    it('is a fix where it is found that guests have no dish, and nowhere else', () => {
        const kinds = (course: string) => {
            const { folder, path, offset } = openPlan(
                `event "Supper" { guests 8 { 2 vegetarian   1 without celery   1 children } }\n\nmenu { ${course} }\n`,
            );
            const all = refactorings({ folder, path, start: offset, end: offset });
            return all.filter(({ kind }) => kind === CodeActionKind.QuickFix).map(({ title }) => title);
        };
        const chicken = (contains: string) =>
            `course <|>main "Roast chicken" is poultry { served on dinner-plate at 63 °C\ncontains ${contains} }`;
        expect(kinds(chicken('nothing'))).toEqual(['Split off a dish for vegetarian']);
        expect(kinds(chicken('celery').replace('<|>', '').replace('cel', 'cel<|>'))).toEqual([]);
        const red = 'pour "R<|>ed" 4 fl oz into red-wine-glass, is medium-red-wine { contains nothing }';
        expect(kinds(chicken('nothing').replace('<|>', '').replace('}', `${red} }`))).toEqual([]);
    });

    it('names first whom the finding at the cursor speaks of, then who else must not have what the course holds', () => {
        const course = (contains: string) => `event "Supper" {
    guests 8 { 2 vegetarian   1 without celery   1 without milk   1 without egg }
}

menu {
    course soup "Game soup" {
        served in soup-bowl at 64 °C
        contains ${contains}
    }
}
`;
        const offers = (contains: string) =>
            Object.keys(offered(course(contains))).map((title) => title.replace('Split off a dish for ', ''));
        expect(offers('m<|>ilk, egg, meat')[0]).toBe('guests without milk');
        expect(offers('milk, e<|>gg')).toEqual([
            'guests without egg',
            'guests without milk',
            'vegetarian',
            'guests without celery',
        ]);
        expect(offers('turmer<|>ic')).toEqual([
            'vegetarian',
            'guests without celery',
            'guests without milk',
            'guests without egg',
        ]);
    });

    it('is not offered while the text can not be read', () => {
        expect(offered('event "S" { guests 8 { 2 vegetarian } } menu { course<|> soup { served inn } }')).toEqual({});
    });
});

describe('move to a file of its own', () => {
    it('takes the house with its comments, and uses it from there', () => {
        const written = `// The supper.
event "Supper" { guests 8 }

// What we own.
house "Hall" {<|>
    own 40 dinner-fork
}

menu {}
`;
        expect(offered(written)['Move the house to `house.cover`']).toEqual({
            'plan.cover': '// The supper.\nuse "house.cover"\n\nevent "Supper" { guests 8 }\n\nmenu {}\n',
            'house.cover': '// What we own.\nhouse "Hall" {\n    own 40 dinner-fork\n}\n',
        });
    });

    it('takes everything of the cupboard, with the file it speaks of', () => {
        const written = `//- drinks.cover
kind marsh-fish is fish
//- plan.cover
use "drinks.cover"
event "Supper" { guests 8 }
kind reed-soup is marsh-fish
fork reed-<|>fork { for reed-soup }
`;
        expect(offered(written)['Move the cupboard to `cupboard.cover`']).toEqual({
            'plan.cover': 'use "drinks.cover"\nuse "cupboard.cover"\nevent "Supper" { guests 8 }\n',
            'cupboard.cover':
                'use "drinks.cover"\n\nkind reed-soup is marsh-fish\n\nfork reed-fork { for reed-soup }\n',
        });
    });

    it('finds a name that is free, and a room’s own', () => {
        const written = `//- long-gallery.cover
room "Other" 8 m by 6 m {}
//- plan.cover
event "Supper" { guests 8 }
room "Long gallery" 8 m by 6 m { table<|> A: round 60 inch, 8 seats }
`;
        expect(Object.keys(offered(written))).toContain('Move the room `Long gallery` to `long-gallery-2.cover`');
    });

    it('is not offered for what stands alone, nor for what speaks of names that stay', () => {
        expect(offered('house "Hall" {<|> own 40 dinner-fork }')).toEqual({});
        const written = `fork reed-fork { for fish }
house "Hall" {<|> own 40 reed-fork }
event "Supper" { guests 8 }
`;
        expect(offered(written)).toEqual({});
    });
});
