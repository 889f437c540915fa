import { check, drawEvening, filesInMemory } from 'underliner-language';
import { describe, expect, it } from 'vitest';
import { standardCupboard } from '../packages/language/src/cupboard/standard.js';
import { drawPiece } from '../packages/language/src/output/drawing/draw-piece.js';
import { coverPicture, tablePicture, type TableLook } from '../packages/language/src/output/drawing/pictures.js';
import { TEXT_WIDTH } from '../packages/language/src/output/sheets/sheet.js';
import { setsBetween } from '../packages/language/src/service/cover-geometry/between-covers.js';
import { poseAt } from '../packages/language/src/service/cover-geometry/outline.js';
import { overlapOf, Solid } from '../packages/language/src/service/cover-geometry/overlap.js';
import { poseOf } from '../packages/language/src/service/cover-geometry/table-top.js';
import { examplePlans } from './support/samples.js';
import { crowdedWords, wordsInPicture } from './support/words-in-picture.js';

// Words in drawings, over every example: none lies over another, none is cut, and every piece of a cover is named.

/** By itself, in the panel, on a sheet. */
const LETTERINGS = [{}, { printedWidth: 200 }, { printedWidth: TEXT_WIDTH * 0.9 }];

const plans = examplePlans()
    .map(({ name, file, texts }) => ({ name, checked: check(file, filesInMemory(texts)) }))
    .filter(({ checked }) => checked.service.variations.length > 0);

/** Names that the picture's pieces have, and that stand nowhere in its words. */
function unnamed(svg: string): string[] {
    const said = wordsInPicture(svg)
        .map(({ words }) => words)
        .join(' ');
    const pieces = [...svg.matchAll(/<g class="piece[^>]*><title>([^<,]*)/g)].map(([, name]) => name!);
    return pieces.filter((name) => !said.includes(name));
}

describe.each(plans)('the covers of $name', ({ checked }) => {
    it('name every piece at every step, and no name lies over another', () => {
        const { variations } = checked.service;
        for (const variation of variations) {
            for (const step of [undefined, ...variation.steps]) {
                for (const lettering of LETTERINGS) {
                    const svg = coverPicture(checked, variation, step, undefined, lettering);
                    const where = `${variation.label}, ${step?.title ?? 'laid'}, ${lettering.printedWidth ?? 'unprinted'}`;
                    expect([...crowdedWords(svg), ...unnamed(svg)], where).toEqual([]);
                }
            }
        }
    });
});

/** By itself, in the panel, on a server's sheet. */
const TABLE_LOOKS: readonly TableLook[] = [
    {},
    { printedWidth: 200, needs: 'unsaid' },
    { printedWidth: TEXT_WIDTH * 0.58, needs: 'by-mark', marks: false },
    // A panel as narrow as they get: it has no room for marks.
    { printedWidth: 80, needs: 'unsaid' },
];

/** A table whose guests have long needs side by side, and one with seats on all sides. */
const CROWDED = `event "Crowded" {
    date 2026-10-17  zone America/Halifax  seated 19:00
    guests 18 {
        1 vegetarian without tree-nuts, gluten at T1 seat 1
        1 vegan without tree-nuts at T1 seat 2
        1 halal without egg at T1 seat 3
        1 vegetarian without celery, mustard at T2 seat 4
        2 children
    }
}
room "Gallery" 18 m by 11 m { table T1: round 60 inch, 8 seats  table T2: rectangle 96 inch by 42 inch, 10 seats }
menu {
    bread from fish until main { contains wheat  dish "Rice crackers" for guests without gluten { contains nothing  suits halal } }
    course fish "Cod" {
        dish "Cod" for the rest { served on fish-plate  contains fish  suits halal }
        dish "Celeriac" for vegetarian { served on fish-plate  contains celery }
        dish "Leek" for vegan { served on fish-plate  contains nothing }
    }
    course main "Duck" {
        dish "Squash" for 5 { served on dinner-plate  contains nothing  suits vegan, halal }
        dish "Duck" is poultry for the rest { served on dinner-plate  contains nothing  suits halal }
    }
}`;

const narrow = plans.find(({ name }) => name.includes('soup-bowls-on-br'))!;
const tables = [
    ...plans.filter(({ name }) => name.includes('saltmarsh-hall')),
    narrow,
    { name: 'crowded tables', checked: check('a.cover', filesInMemory({ 'a.cover': CROWDED })) },
].filter(({ checked }) => checked.service.tables.length > 0);

describe.each(tables)('the tables of $name', ({ checked }) => {
    const { plan, service } = checked;
    const names = service.tables.map(({ name }) => name);
    const kept = new Map<string, string>();
    const drawn = (name: string, look: TableLook): string => {
        const key = `${name} ${TABLE_LOOKS.indexOf(look)}`;
        kept.set(key, kept.get(key) ?? tablePicture(checked, name, look)!);
        return kept.get(key)!;
    };

    it('keep the words of their seats apart, inside the picture and as large as they have to be', () => {
        for (const name of names) {
            for (const look of TABLE_LOOKS) {
                const svg = drawn(name, look);
                expect(crowdedWords(svg), `${name}, ${look.printedWidth ?? 'unprinted'}`).toEqual([]);
                const printed = widthOf(svg) / (look.printedWidth ?? Infinity);
                const least = Math.min(...wordsInPicture(svg).map(({ size }) => size));
                expect(least / printed).toBeGreaterThanOrEqual((12 / 72) * 25.4 - 0.05);
                // What is said takes room, but the table is what the picture shows.
                const table = service.tables.find((each) => each.name === name)!;
                expect(table.width / widthOf(svg), name).toBeGreaterThan(0.4);
            }
        }
    });

    it('name the courses of each mark, and give on a sheet no mark of a plate', () => {
        for (const guest of service.seats.guests.filter(({ table }) => names.includes(table))) {
            const said = wordsInPicture(drawn(guest.table, TABLE_LOOKS[0]!)).map(({ words }) => words);
            const lines = said.join(' ');
            guest.markers.forEach((mark, course) => {
                if (mark !== undefined && guest.dishes[course] !== undefined) {
                    expect(lines).toContain(`${mark}: `);
                }
            });
            const sheet = wordsInPicture(drawn(guest.table, TABLE_LOOKS[2]!)).map(({ words }) => words);
            expect(sheet.filter((words) => / \d$|:/.test(words))).toEqual([]);
        }
    });

    it('have as many sets of salt and pepper as are pulled, on nothing else', () => {
        const pulled = service.counts.find(({ piece }) => piece === 'salt-and-pepper')?.needed;
        const sets = names.map(
            (name) => drawn(name, TABLE_LOOKS[0]!).match(/data-piece="salt-and-pepper"/g)?.length ?? 0,
        );
        expect(sets.reduce((sum, count) => sum + count, 0)).toBe(pulled);
        for (const table of service.tables) {
            const guests = service.seats.guests.filter((guest) => guest.table === table.name);
            const covers = table.seats.flatMap((seat) => {
                const guest = guests.find((each) => each.seat === seat.number);
                const geometry = service.coverGeometry[guest?.variation ?? 0]!.onTables;
                const { pieces } = geometry.find((each) => each.tables.includes(table.name))!.on;
                return guests.length > 0 && !guest ? [] : [{ seat, pieces }];
            });
            if (plan.customs['salt-and-pepper'].value === 'between-two') {
                const between = setsBetween(table, covers, Math.ceil(covers.length / 2)).map(
                    ({ from, piece }) => new Solid(piece, poseAt(from.x, from.y, from.degrees - 90)),
                );
                const others = covers.flatMap(({ seat, pieces }) =>
                    pieces.filter(({ row }) => row !== 'middle').map((piece) => new Solid(piece, poseOf(seat))),
                );
                expect(between.length).toBe(Math.ceil(covers.length / 2));
                for (const [index, set] of between.entries()) {
                    const near = [...others, ...between.slice(index + 1)].filter((other) => overlapOf(set, other) > 0);
                    expect(
                        near.map(({ piece }) => piece.id),
                        table.name,
                    ).toEqual([]);
                }
            }
        }
    });
});

const widthOf = (svg: string): number => Number(/ width="([\d.]+)"/.exec(svg)![1]);

const evenings = plans.filter(({ checked }) => checked.service.run !== undefined);

describe.each(evenings)('the evening of $name', ({ checked }) => {
    it.each([undefined, 400, 700, 1200])('keeps its words apart on a page %s dots wide', (width) => {
        expect(crowdedWords(drawEvening(checked, { width })!.drawing)).toEqual([]);
    });
});

describe('a picture too narrow for its words', () => {
    it('leaves a name out rather than write it over another', () => {
        const { checked } = plans.find(({ name }) => name.endsWith('mess-night.cover'))!;
        const svg = coverPicture(checked, checked.service.variations[0]!, undefined, undefined, { printedWidth: 120 });
        expect(crowdedWords(svg)).toEqual([]);
        expect(unnamed(svg)).not.toEqual([]);
    });
});

describe('the drawing of a piece', () => {
    const pieces = [...standardCupboard().pieces.values()];
    it.each(pieces)('of $name is no higher than a hover shows, its words apart and inside', (piece) => {
        const svg = drawPiece(piece);
        const height = svg === undefined ? 0 : Number(/ height="([\d.]+)" role/.exec(svg)![1]);
        expect(height).toBeLessThanOrEqual(120);
        expect(svg === undefined ? [] : crowdedWords(svg)).toEqual([]);
    });
});
