import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { check } from '../check.js';
import { filesInMemory } from '../plan/files.js';
import { planJson } from './plan-json.js';

const folder = new URL('../../../../examples/saltmarsh-hall/', import.meta.url);
const texts = Object.fromEntries(
    readdirSync(folder)
        .filter((name) => name.endsWith('.cover'))
        .map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]),
);

interface Marked {
    readonly marker: string;
    readonly dish: string;
    readonly count: number;
    readonly seats?: readonly { readonly table: string; readonly seat: number }[];
}

interface Place {
    readonly seat: number;
    readonly seatIs: string;
    readonly initials?: string;
    readonly needs?: string;
    readonly cover: number;
    readonly marked: readonly { readonly course: string; readonly dish: string; readonly marker: string }[];
}

interface Service {
    readonly covers: readonly { readonly count: number; readonly dishes: readonly string[] }[];
    readonly plates: readonly {
        readonly course: string;
        readonly dish: string;
        readonly count: number;
        readonly marker?: string;
    }[];
    readonly seats: {
        readonly tables: readonly { readonly table: string; readonly places: readonly Place[] }[];
        readonly caution: string;
    };
    readonly run: {
        readonly courses: readonly { readonly course: string; readonly markedPlates: readonly Marked[] }[];
        readonly platesCaution: string;
    };
}

const serviceOf = (file: string): Service =>
    (planJson(check(file, filesInMemory(texts)), true) as unknown as { service: Service }).service;

describe('seats and marks in the compiled plan', () => {
    const { covers, plates, seats, run } = serviceOf('lantern-supper.cover');
    const places = seats.tables.flatMap(({ table, places: all }) => all.map((place) => ({ table, ...place })));

    it('put as many guests on each cover as the plan counts for it', () => {
        covers.forEach(({ count }, index) => {
            expect(places.filter(({ cover }) => cover === index + 1).length).toBe(count);
        });
    });

    it('keep the seat that the plan states, with its marks in every course', () => {
        const place = places.find(({ table, seat }) => table === 'T3' && seat === 5)!;
        expect(place).toMatchObject({ seatIs: 'stated', needs: 'vegetarian, without tree-nuts' });
        expect(place.marked.map(({ course, marker }) => [course, marker])).toContainEqual(['Main course', 'V+N 3']);
        expect(place.marked.length).toBe(8);
    });

    it('are the same at the pass, on the run sheet and in the seat list', () => {
        const main = plates.filter(({ course }) => course === 'Main course');
        const onRunSheet = run.courses.find(({ course }) => course === 'Main course')!.markedPlates;
        expect(onRunSheet.map(({ marker, dish, count }) => [marker, dish, count])).toEqual(
            main.map(({ marker, dish, count }) => [marker, dish, count]),
        );
        for (const { marker, dish, count, seats: told } of onRunSheet) {
            const inList = places.filter(({ marked }) =>
                marked.some((each) => each.course === 'Main course' && each.dish === dish && each.marker === marker),
            );
            expect(inList.length).toBe(count);
            if (told) {
                expect(told).toEqual(inList.map(({ table, seat }) => ({ table, seat })));
            }
        }
    });

    it('tell where the plates go that are for some guests alone, and no more', () => {
        const onRunSheet = run.courses.find(({ course }) => course === 'Main course')!.markedPlates;
        expect(onRunSheet.filter(({ seats: told }) => told).map(({ marker }) => marker)).toEqual([
            'GF 1',
            'V 3',
            'V+N 3',
        ]);
    });

    it('come with the caution about contact wherever they stand', () => {
        for (const caution of [seats.caution, run.platesCaution]) {
            expect(caution).toMatch(/Keep boards, oil, hands, tongs and surfaces apart/);
        }
    });

    it('know guests of the list by their initials', () => {
        const eight = serviceOf('table-of-eight.cover');
        expect(eight.seats.tables[0]!.places.map(({ initials }) => initials)).toEqual([
            'I. M.',
            'T. F.',
            'A. R.',
            'C. S.',
            'P. S.',
            'H. S.',
            'M. E.',
            'R. D.',
        ]);
        expect(JSON.stringify(eight)).not.toMatch(/Isolde|Marrow|Eelgrass/);
    });
});
