import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse as readCsv } from 'csv-parse/sync';
import MarkdownIt from 'markdown-it';
import {
    check,
    filesInMemory,
    LIST_FORMATS,
    LIST_NAMES,
    LIST_SCHEMA,
    listOf,
    listText,
    type List,
    type ListCell,
    type ListName,
} from 'underliner-language';
import { describe, expect, it } from 'vitest';
import { workspace } from './sheets/workspace.js';

// What `list` writes is read back by parsers that know nothing of how it was written.

const checked = check('examples/saltmarsh-hall/lantern-supper.cover', workspace);
const list = (name: ListName): List => listOf(checked, name)!;
const shown = (cell: ListCell): string => String(cell ?? '');

/** A list whose one row holds these cells. */
const listWith = (...cells: ListCell[]): List => ({
    name: 'pull',
    title: 'Pull list',
    event: 'Supper',
    columns: cells.map((_, index) => ({ key: `c${index}`, head: `C${index}` })),
    rows: [cells],
    cautions: [],
});
/** The cells of the row after the head, as RFC 4180 says to read them. */
const readBack = (text: string): string[] => readCsv(text, { recordDelimiter: '\r\n' })[1]!;

describe('CSV', () => {
    it.each(LIST_NAMES)('of %s is read back cell for cell by another library', (name) => {
        const { columns, rows } = list(name);
        expect(readCsv(listText(list(name), 'csv'), { recordDelimiter: '\r\n' })).toEqual([
            columns.map(({ head }) => head),
            ...rows.map((row) => row.map(shown)),
        ]);
        expect(rows.length).toBeGreaterThan(10);
    });

    // quantities 10, RFC4180 s.2
    it('ends every line with CR and LF, and has as many fields in each', () => {
        const text = listText(list('allergens'), 'csv');
        expect(text.endsWith('\r\n')).toBe(true);
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    });

    // quantities 14.5, X5
    it('doubles quotes and puts what holds a comma, a quote or a line break in quotes', () => {
        expect(listText(listWith('5" plate, rim'), 'csv')).toBe('C0\r\n"5"" plate, rim"\r\n');
        const awkward = ['a\r\nb', 'a\nb', '  spaces stay ', '"', ',', 'crème brûlée', '🦪'];
        expect(readBack(listText(listWith(...awkward), 'csv'))).toEqual(awkward);
    });

    const formulas = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠', ' =', '\u00A0='];
    it.each(formulas.map((sign) => [JSON.stringify(sign), sign]))('gives %s nothing to start', (_, sign) => {
        const cell = `${sign}HYPERLINK("http://saltmarsh.example","Menu")\n,1`;
        expect(readBack(listText(listWith(cell), 'csv'))).toEqual([`'${cell}`]);
    });

    it('leaves numbers below zero what they are, and words of an honest plan too', () => {
        expect(listText(listWith(-12.13, 0, 'salt-and-pepper', "cook's whim"), 'csv')).toBe(
            "C0,C1,C2,C3\r\n-12.13,0,salt-and-pepper,cook's whim\r\n",
        );
        expect(listText(list('run'), 'csv')).toMatch(/,-12\.13,/);
    });

    it('guards what a plan says, wherever it stands', () => {
        const text = `event "=1+1" { guests 2 { 1 without milk } }
            room "R" { table "@T": round 60 inch, 8 seats }
            menu { course soup "+Leek" {
                dish "-Leek" { served in soup-plate at 64 °C contains milk sauce "@Oil" { contains nothing } }
                dish "=cmd" for guests without milk { served in soup-plate at 64 °C contains nothing }
            } }`;
        const wild = check('a.cover', filesInMemory({ 'a.cover': text }));
        for (const name of ['seats', 'allergens'] as const) {
            const rows = readCsv(listText(listOf(wild, name)!, 'csv'), { recordDelimiter: '\r\n' });
            expect(rows.flat().filter((cell) => /^[=+\-@]/.test(cell))).toEqual([]);
            expect(rows.flat()).toContain(name === 'seats' ? "'@T" : "'-Leek");
        }
    });
});

describe('Markdown', () => {
    /** The cells of the only table, as text. */
    function cellsOf(markdown: string): string[][] {
        const rows: string[][] = [];
        for (const token of new MarkdownIt({ linkify: false }).parse(markdown, {})) {
            if (token.type === 'tr_open') {
                rows.push([]);
            } else if (token.type === 'inline' && rows.length > 0 && token.level > 3) {
                expect(token.children?.map(({ type }) => type).filter((type) => type !== 'text')).toEqual([]);
                rows.at(-1)!.push(token.children!.map(({ content }) => content).join(''));
            }
        }
        return rows;
    }

    it.each(LIST_NAMES)('of %s is a table of the same cells, and nothing else in them', (name) => {
        const { columns, rows } = list(name);
        expect(cellsOf(listText(list(name), 'markdown'))).toEqual([
            columns.map(({ head }) => head),
            ...rows.map((row) => row.map(shown)),
        ]);
    });

    it('keeps the marks of a text from meaning anything', () => {
        const wild = [
            'a|b',
            '\\|',
            '`code`',
            '[x](http://saltmarsh.example)',
            '*a* _b_ ~~c~~',
            '<b>',
            '&amp;',
            '# h',
            'a\nb',
        ];
        const [, cells] = cellsOf(listText(listWith(...wild), 'markdown'));
        expect(cells).toEqual([...wild.slice(0, -1), 'a b']);
    });

    it('says event, day, revision and cautions', () => {
        const text = listText(list('allergens'), 'markdown');
        expect(text).toContain('## Allergens\n\nLantern night supper, Saturday 17 October 2026, revision 4\n');
        expect(text).toContain('licensed staff decide.\n');
    });
});

describe('JSON', () => {
    const schema = JSON.parse(
        readFileSync(new URL('../packages/language/schema/list.schema.json', import.meta.url), 'utf8'),
    ) as { readonly $id: string };
    const validate = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(schema);

    it.each(LIST_NAMES)('of %s is what its schema says, each row by the keys of the columns', (name) => {
        const json = JSON.parse(listText(list(name), 'json')) as { rows: Record<string, ListCell>[] };
        validate(json);
        expect(validate.errors ?? []).toEqual([]);
        const { columns, rows } = list(name);
        expect(new Set(columns.map(({ key }) => key)).size).toBe(columns.length);
        expect(json.rows.map((row) => columns.map(({ key }) => shown(row[key])))).toEqual(
            rows.map((row) => row.map(shown)),
        );
    });

    it('names its schema and version; the schema refuses what is no list', () => {
        expect(LIST_SCHEMA).toBe(schema.$id);
        expect(JSON.parse(listText(list('pull'), 'json'))).toMatchObject({
            schema: LIST_SCHEMA,
            version: 1,
            list: 'pull',
            event: 'Lantern night supper',
            date: '2026-10-17',
            revision: 4,
        });
        expect(validate({ schema: LIST_SCHEMA, version: 1, list: 'pull', rows: [] })).toBe(false);
    });
});

describe('what stands on a list', () => {
    const cell = ({ columns, rows }: List, row: (cells: readonly ListCell[]) => boolean, key: string): ListCell =>
        rows.find(row)![columns.findIndex((column) => column.key === key)];

    it('pull: every piece that is fetched, with the figures of the plan', () => {
        const pull = list('pull');
        expect(pull.rows.map(([, piece]) => piece).toSorted()).toEqual(
            checked.service.pull
                .filter(({ pull: count }) => count > 0)
                .map(({ piece }) => piece)
                .toSorted(),
        );
        for (const line of checked.service.pull.filter(({ pull: count }) => count > 0)) {
            const own = (cells: readonly ListCell[]): boolean => cells[1] === line.piece;
            expect([cell(pull, own, 'pull'), cell(pull, own, 'short')]).toEqual([line.pull, line.short]);
        }
    });

    it('seats: every guest once; by initials unless names are asked for', () => {
        expect(list('seats').rows).toHaveLength(84);
        const eight = check('examples/saltmarsh-hall/table-of-eight.cover', workspace);
        expect(listText(listOf(eight, 'seats')!, 'csv')).toContain(',I. M.,');
        expect(LIST_FORMATS.map((format) => listText(listOf(eight, 'seats')!, format)).join()).not.toContain('Isolde');
        expect(listText(listOf(eight, 'seats', { names: true })!, 'csv')).toContain('Isolde Marrow');
    });

    it('run: every task of the run sheet', () => {
        expect(list('run').rows).toHaveLength(checked.service.run!.tasks.length);
        const call = list('run').rows.find(([, , , does]) => does === 'call')!;
        expect(call.slice(2, 5)).toEqual(['captain', 'call', 'Smoked beet and curd']);
        expect(call[9]).toMatch(/^2026-10-17T\d\d:\d\d:\d\d-03:00$/);
    });

    it('allergens: what carries each; a question mark, never a blank, where nothing is stated', () => {
        const allergens = list('allergens');
        const bread = (cells: readonly ListCell[]): boolean => cells[1] === 'bread';
        expect(cell(allergens, bread, 'contains-gluten')).toBe('wheat');
        expect(cell(allergens, bread, 'contains-milk')).toBeUndefined();
        const silent = check('a.cover', filesInMemory({ 'a.cover': 'event "A" {} menu { course soup "Leek" {} }' }));
        const { columns, rows } = listOf(silent, 'allergens')!;
        const told = rows[0]!.filter((_, index) => columns[index]!.key.startsWith('contains-'));
        expect(told.length).toBeGreaterThan(5);
        expect(new Set(told)).toEqual(new Set(['?']));
    });

    it('is nothing where the plan has nothing for it', () => {
        const small = check('a.cover', filesInMemory({ 'a.cover': 'event "A" {} menu { course soup "Leek" {} }' }));
        expect([listOf(small, 'seats'), listOf(small, 'run')]).toEqual([undefined, undefined]);
    });
});
