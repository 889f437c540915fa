/** No clause of the language may be written otherwise, or taken out, without somebody being told. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { AstUtils, CstUtils, isLeafCstNode, type AstNode, type LeafCstNode } from 'langium';
import { describe, expect, it } from 'vitest';
import { reflection } from '../../grammar/generated/ast.js';
import { check, type Checked } from '../../check.js';
import { parseText } from '../../grammar/parse.js';
import { parsePlainly } from '../../grammar/plain-parser.js';
import { filesInMemory } from '../../plan/files.js';
import type { Compared } from './change.js';
import { compare } from './compare.js';

const examples = join(import.meta.dirname, '../../../../../examples/saltmarsh-hall');
/** The clauses that no example has. */
const RARE = `event "Marsh dinner" {
    date 2026-10-17  zone America/Halifax  doors 18:30  seated 19:00
    guests 12 guaranteed 10 set for 14 { 1 without milk at T1 seat 2  2 children  1 halal }
    crew 4 eat "Lamb" at 17:15
    rent 20 salad-fork, 1 hot-box { holds 60 plates }
    replications 3 seed 7
    local code marsh
    waive wine-temperature because "the host’s own wine"
}
house "Saltmarsh Hall" {
    own 40 dinner-fork, 1 plate-warmer { holds 60 plates }
    spare 5 % of dinner-fork
    laying { dessert: brought  limit: 4 per side }
    washing { 45 racks per hour  polish 6 pieces per min  drying 10 min }
    rule glass-suits-drink is hint because "few glasses"
}
room "Long gallery" 18 m by 11 m {
    at 20 °C  aisle 1.5 m  pass on the far
    table T1: row of 2 rectangle 72 inch by 30 inch, 8 seats, 1 accessible, at 3 m by 4 m, turned
    table T2: round 60 inch, 8 seats
}
team { captain 1  servers 2 at 90 plates per hour each  plating-lines 1 with stations of 3 s, 4 s }
menu {
    water still 180 ml into water-glass
    bread from soup until main on bread-plate with butter-spreader { contains wheat  suits halal  butter "Butter" { contains milk } }
    course soup "Leek soup" {
        served in soup-bowl warmed to 60 °C on underliner, from the left, poured at table from soup-tureen, at 62 °C, portion 200 ml
        preset 10 min before seating
        contains nothing
        cooled to 21 °C in 2 h, to 5 °C in 4 h
        reheat to 74 °C in 2 h
        measured 68 °C after 3 min
        carried covered
        plated in 10 s, 6 s
        sauce "Chive oil", passed { contains celery }
        waive three-per-side because "agreed"
    }
    course main "Lamb" is roast {
        served undercooked on dinner-plate at 58 °C, within 8 min
        starts at 19:40
        eaten with dinner-fork laid and steak-knife or dinner-knife
        contains celery
        held at 60 °C for 30 min
        leaves the pass at 70 °C
        cook to 63 °C for 3 min
        cook 2 extra
        plated ahead into hot-box
        suits halal
        sauce "Gravy" poured at table from sauce-boat, left off for guests without milk { contains milk }
        lay left dinner-fork  right dinner-knife
        pour "Country red" 100 ml into red-wine-glass, at 17 °C, is full-red-wine, for 6, brought with the course, left off for children {
            contains sulphites
            suits halal
            instead "Sorrel cordial" 100 ml, for everyone { contains nothing }
        }
        pour "Marsh cordial" 100 ml into water-glass, for children
    }
    course dessert "Pear" {
        served on dessert-plate
        dish "Poached pear" for 50 % without milk { contains egg }
        dish "Plain pear" for everyone { contains nothing }
    }
    coffee after dessert, in coffee-cup, with coffee-spoon, at 70 °C { contains nothing }
    speech "Welcome" before soup, lasts 5 min, at 19:02
}
kind marsh-soup is soup {
    eaten with soup-spoon and dinner-knife or dinner-fork
    in soup-bowl or soup-plate
    hot
    at 60 °C to 70 °C
    of celery
    usually contains celery
    follows appetizer
    portion 200 ml to 250 ml
    cook to 70 °C
    raw
    called "marsh soup"
    also bog-soup
}
drink marsh-wine is red-wine { strength 12 % }
fork marsh-fork is dinner-fork {
    for marsh-soup
    tines 3 to 4
    on underliner
    pairs with dinner-knife
    called "marsh fork"
    also bog-fork
    length 180 mm to 190 mm
    stainless
}
allergen samphire is celery { required in marsh  each by name  called "sea asparagus" in marsh  also glasswort }
diet marsh-diet { excludes samphire  stated only  term "VeganDiet"  mark "MD"  called "marsh diet"  also bog-diet }
code marsh { called "the marsh’s code"  zones America/Halifax, Atlantic/Bermuda  hot-holding 60 °C }
setup { task "Chairs" takes 20 min }
`;

const texts: Readonly<Record<string, string>> = {
    'rare.cover': RARE,
    ...Object.fromEntries(
        readdirSync(examples, { recursive: true, encoding: 'utf8' })
            .filter((name) => /\.\w+$/.test(name))
            .map((name) => [name, readFileSync(join(examples, name), 'utf8')]),
    ),
};

/** The events, and which file of theirs is changed: the small ones first, for each sort of clause is changed once. */
const FILES = [
    ['rare.cover', 'rare.cover'],
    ['table-of-eight.cover', 'table-of-eight.cover'],
    ['table-of-eight.cover', 'table-of-eight-guests.cover'],
    ['summer-lunch.cover', 'summer-lunch.cover'],
    ['mess-night.cover', 'mess-night.cover'],
    ['mess-night.cover', 'mess-house.cover'],
    ['lantern-supper.cover', 'lantern-supper.cover'],
    ['lantern-supper.cover', 'house.cover'],
    ['lantern-supper.cover', 'long-gallery.cover'],
    ['lantern-supper.cover', 'cupboard.cover'],
] as const;

/** Words of which each may stand where the other does. */
const PAIRS = [
    ...[
        ['on', 'in'],
        ['warmed', 'chilled'],
        ['left', 'right'],
        ['far', 'near'],
        ['covered', 'open'],
        ['hot', 'cold'],
    ],
    ...[
        ['raw', 'undercooked'],
        ['sauce', 'garnish'],
        ['toast', 'speech'],
        ['after', 'before'],
        ['setup', 'strike'],
    ],
    ...[
        ['still', 'sparkling'],
        ['hint', 'info'],
        ['nothing', 'egg'],
        ['everyone', 'the rest'],
        ['and', 'or'],
    ],
];
const PARTNER = new Map<string, string>(
    PAIRS.flatMap(([one, other]) => [
        [one!, other!],
        [other!, one!],
    ]),
);

interface Edit {
    readonly what: string;
    readonly event: string;
    readonly file: string;
    readonly text: string;
}

const seen = new Set<string>();
const edits = FILES.flatMap(([event, file]) => editsOf(event, file, texts[file]!));

/** Of each sort of clause the first that can be read then: it is taken out, and each of its figures, texts and names is another. */
function editsOf(event: string, file: string, text: string): Edit[] {
    const { tree } = parseText(text);
    const nodes = [tree as AstNode, ...AstUtils.streamAllContents(tree)];
    return nodes.flatMap((node) => {
        const { $cstNode: cst, $container: container, $containerProperty: property = '' } = node;
        const edit = (what: string, [start, end, instead]: readonly [number, number, string]): Edit[] => {
            const edited = `${text.slice(0, start)}${instead}${text.slice(end)}`;
            if (seen.has(what) || parsePlainly(edited) === undefined) {
                return [];
            }
            seen.add(what);
            return [{ what, event, file, text: edited }];
        };
        if (!cst) {
            return [];
        }
        const sort = `${container?.$type ?? ''} ${node.$type}`;
        const isListed = container && Array.isArray((container as unknown as Record<string, unknown>)[property]);
        const comma = /,?\s*$/.exec(text.slice(0, cst.offset))!.index;
        return [
            ...(isListed ? edit(`no ${sort}`, [comma, cst.end, ' ']) : []),
            ...CstUtils.streamCst(cst)
                .filter((leaf): leaf is LeafCstNode => isLeafCstNode(leaf) && !leaf.hidden && leaf.astNode === node)
                .flatMap((leaf) => {
                    const other = otherwise(leaf);
                    const at = leaf.grammarSource?.$container;
                    const place = at && 'feature' in at ? String(at.feature) : '';
                    return other === undefined
                        ? []
                        : edit(`another ${place} (${leaf.tokenType.name}) in ${sort}`, [leaf.offset, leaf.end, other]);
                }),
        ];
    });
}

function otherwise({ tokenType: { name }, text }: LeafCstNode): string | undefined {
    switch (name) {
        case 'NUMBER':
            return String(Number(text) + 1);
        case 'STRING':
            return `${text.slice(0, -1)} too"`;
        case 'TIME':
        case 'DATE':
            return text.replace(/\d$/, (digit) => String((Number(digit) + 1) % 10));
        case 'ID':
            return `${text}-too`;
        default:
            return PARTNER.get(text);
    }
}

const checkedWith = (event: string, file: string, text: string): Checked =>
    check(event, filesInMemory({ ...texts, [file]: text }));
const asWritten = new Map(FILES.map(([event]) => [event as string, checkedWith(event, event, texts[event]!)]));

/** Told by a finding alone, or only that the plans differ: nobody does anything otherwise. */
const BENEATH = {
    'another  (ID) in Custom CustomFigure': 'what a figure is per is wrong, and the figure holds',
} as const;

/** Nothing stands in them that could be another. */
const EMPTY = ['File', 'ForRest'];

describe('changed, and told', () => {
    it('are clauses of every sort', () => {
        const wanted = reflection
            .getAllTypes()
            .filter((type) => reflection.getAllSubTypes(type).every((sub) => sub === type) && !EMPTY.includes(type));
        const sorts = new Set(edits.flatMap(({ what }) => what.split(' ').at(-1)!));
        expect(wanted).toContain('CookTo');
        expect(wanted.filter((type) => !sorts.has(type))).toEqual([]);
    });

    /** Rules are asked only where nothing else tells. */
    const unjudged = ({ plan, service, texts: of }: Checked): Compared => ({ plan, service, texts: of, findings: [] });

    it.each(edits.map((edit) => [edit.what, edit] as const))('%s', (what, { event, file, text }) => {
        const [before, after] = [asWritten.get(event)!, checkedWith(event, file, text)];
        const told = compare(unjudged(before), unjudged(after)).filter(({ key }) => key !== 'elsewhere');
        const changes = told.length > 0 ? told : compare(before, after);
        expect(changes).not.toEqual([]);
        expect(told.length === 0, changes.map((each) => each.text).join('\n')).toBe(what in BENEATH);
    });
});

describe('the same', () => {
    it.each(['rare.cover', 'summer-lunch.cover'])('%s laid out anew, with a remark', (event) => {
        const text = texts[event]!.replaceAll('\n', '\n\n// As agreed.\n');
        expect(compare(asWritten.get(event)!, checkedWith(event, event, text))).toEqual([]);
    });

    it('in other units', () => {
        const text = RARE.replace('at 70 °C', 'at 158 °F').replace('1.5 m ', '1500 mm ').replace('10 min', '600 s');
        expect(compare(asWritten.get('rare.cover')!, checkedWith('rare.cover', 'rare.cover', text))).toEqual([]);
    });
});
