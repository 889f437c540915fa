import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { CLIENT, FOLDER, openPlan, type OpenPlan } from '../../../../../tests/support/open-plan.js';
import { panelCopy, panelPage, planOf } from './panel-page.js';
import type { PanelChoices, PanelKind, PanelPage } from './requests.js';
import { answerPanels } from './answer-panels.js';
import { ShownPlans } from './shown-plan.js';
import { Workspace } from '../workspace.js';
import type { Connection } from 'vscode-languageserver';
import type { FileText } from '../../plan/files.js';

// What panels show of plans, and where it leads.

const HALL = ['cupboard.cover', 'house.cover', 'long-gallery.cover', 'lantern-supper.cover'];
const lanternSupper = (): OpenPlan =>
    openPlan(
        HALL.map(
            (name) =>
                `//- ${name}\n${readFileSync(new URL(`../../../../../examples/saltmarsh-hall/${name}`, import.meta.url), 'utf8')}`,
        ).join(''),
    );

const SUPPER = `event "Quiet supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24 { 2 vegetarian }
}
room "Long gallery" 18 m by 11 m {
    table T1 to T3: round 60 inch, 8 seats
}
team { captain 1   servers 3   runners 1   plating-lines 1 at 12 plates per min }
house "Hall" { own 40 soup-spoon, 20 soup-bowl }
menu {
    course soup "Squash soup" {
        served in soup-bowl warmed to 60 °C at 64 °C
        eaten with soup-spoon, brought with the course
        lasts 15 min
        contains nothing
        suits vegetarian
    }
    course main "Main course" {
        lasts 35 min
        dish "Braised chicken" is poultry for the rest { served on dinner-plate contains celery }
        dish "Barley-stuffed squash" is vegetable-main for vegetarian { served on dinner-plate contains gluten }
    }
}
`;

const show = (place: OpenPlan, panel: PanelKind, choices: PanelChoices = {}, plans = new ShownPlans()): PanelPage =>
    panelPage(place, { uri: '', panel, choices }, plans, CLIENT);
const change = ({ folder, path }: OpenPlan, text: string): void => {
    folder.opened(path, TextDocument.create(`${FOLDER}/${path}`, 'cover', 8, text));
    folder.changed(path);
};
/** The text of every element whose opening tag matches. */
const texts = (html: string, tag: RegExp): string[] =>
    [...html.matchAll(new RegExp(`<${tag.source}[^>]*>(.*?)</`, 'g'))].map(([, text]) => text!);
/** The places that a word of the page leads to, as text. */
const leads = (place: OpenPlan, { html, places }: PanelPage, words: string): string[] =>
    [...html.matchAll(new RegExp(`<button[^>]* data-at="(\\d+)"[^>]*>${words}</button>`, 'g'))].map(([, at]) => {
        const { uri, range } = places[Number(at)]!;
        return place.words(range, uri.slice(FOLDER.length + 1));
    });

describe('every panel', () => {
    const place = lanternSupper();
    const sights: readonly PanelChoices[] = [
        {},
        { view: 'neighbours' },
        { view: 'table', step: '5' },
        { view: 'room' },
    ];
    const all = (['table', 'evening', 'pull'] as const).flatMap((panel) =>
        sights.map((choices) => show(place, panel, choices)),
    );

    it('is HTML without script or style, which a strict page takes', () => {
        for (const { html } of all) {
            expect(html).not.toMatch(
                /<script|<style|<link|<img|\sstyle=|\son[a-z]+=|javascript:|https?:(?!\/\/www\.w3\.org)/,
            );
        }
    });

    it('leads to places that are there', () => {
        for (const { html, places } of all) {
            const counted = [...html.matchAll(/data-at="(\d+)"/g)].map(([, at]) => Number(at));
            expect(counted.length).toBeGreaterThan(5);
            expect(Math.max(...counted)).toBeLessThan(places.length);
            expect(places.every(({ range }) => range.end.line >= range.start.line)).toBe(true);
        }
    });

    it('gives no two things the same id', () => {
        for (const { html } of all) {
            const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
            expect(new Set(ids).size).toBe(ids.length);
        }
    });

    it('is the same for the same plan', () => {
        expect(show(lanternSupper(), 'table')).toEqual(show(lanternSupper(), 'table'));
    });

    it('of a used file shows the one event that uses it, and nothing where there is none', () => {
        expect(planOf({ folder: place.folder, path: 'house.cover' })?.path).toBe('lantern-supper.cover');
        expect(planOf(openPlan('house "Hall" { spare 5 % }'))).toBeUndefined();
    });
});

describe('the table panel', () => {
    it('shows a step at a time: what is brought, used and cleared', () => {
        const place = openPlan(SUPPER);
        const titles = Array.from({ length: 9 }, (_, step) => show(place, 'table', { step: String(step) })).map(
            ({ html }) => [...texts(html, /output/), ...texts(html, /h2/)].join(' | '),
        );
        expect(titles).toMatchInlineSnapshot(`
          [
            "Step 1 of 9: Guests sit | On the table",
            "Step 2 of 9: Bring what Squash soup is eaten with | Brought now | On the table",
            "Step 3 of 9: Serve Squash soup, 19:00 to 19:04 | Brought now | On the table",
            "Step 4 of 9: Squash soup is eaten | In use | On the table",
            "Step 5 of 9: Clear Squash soup, 19:17 to 19:21 | Cleared now | On the table",
            "Step 6 of 9: Serve Main course, 19:19 to 19:23 | Brought now | On the table",
            "Step 7 of 9: Main course is eaten | In use | On the table",
            "Step 8 of 9: Clear Main course, 19:55 to 19:59 | Cleared now | On the table",
            "Step 9 of 9: Guests leave | Cleared now",
          ]
        `);
    });

    it('leads from a piece to the words that put it there, and from what nobody names to the dish', () => {
        const place = openPlan(SUPPER);
        const brought = show(place, 'table', { step: '1' });
        expect(leads(place, brought, 'soup spoon')).toEqual(['soup-spoon, brought with the course']);
        expect(leads(place, show(place, 'table', { step: '0' }), 'dinner fork')).toEqual([
            expect.stringContaining('Braised chicken'),
        ]);
    });

    it('goes from one cover to its neighbours, the table and the room', () => {
        const place = openPlan(SUPPER);
        const seats = (view: string) => {
            const { html } = show(place, 'table', { view, table: 'T2', seat: '3' });
            return new Set([...html.matchAll(/data-seat="(\d+)"/g)].map(([, seat]) => seat)).size;
        };
        expect(['cover', 'neighbours', 'table', 'room'].map(seats)).toEqual([0, expect.any(Number), 8, 0]);
        expect(seats('neighbours')).toBeGreaterThanOrEqual(3);
        const room = show(place, 'table', { view: 'room' });
        expect([...room.html.split('</svg>')[0]!.matchAll(/data-table="(\w+)"/g)].map(([, name]) => name)).toEqual([
            'T1',
            'T2',
            'T3',
        ]);
        expect(leads(place, room, 'T2')).toEqual(['T1']);
    });

    it('takes what was chosen for a plan that has become smaller, or nonsense, as far as it goes', () => {
        const place = openPlan(SUPPER);
        const nonsense: readonly PanelChoices[] = [
            { step: '900', variation: '7', table: 'T9', seat: '80', view: 'neighbours' },
            { step: '-1', variation: 'x', view: 'moon' },
        ];
        for (const choices of nonsense) {
            expect(show(place, 'table', choices).html).toContain('<svg');
        }
    });

    it('is lettered larger in a narrower panel, in which it is shown whole', () => {
        const place = openPlan(SUPPER);
        const letters = (width?: string): number => {
            const { html } = show(place, 'table', width === undefined ? {} : { width });
            expect(html).toContain(`data-width="${width ?? '700'}"`);
            const [, across] = /viewBox="0 0 ([\d.]+) /.exec(html)!;
            const [, size] = /class="words"[^>]* font-size="([\d.]+)"/.exec(html)!;
            return (Number(size) / Number(across)) * Number(width ?? '700');
        };
        for (const width of ['300', '400', '500']) {
            expect(letters(width), width).toBeGreaterThan(11);
        }
        expect(letters('900') / 900).toBeCloseTo(letters() / 700, 5);
        for (const nonsense of ['0', '-4', 'x', '1e12']) {
            expect(letters(nonsense)).toBeDefined();
        }
    });

    it.each([
        ['cover', 'data-piece'],
        ['table', 'data-piece'],
        ['room', 'data-table'],
    ])('names each thing in words as in the picture, for several are written at one place: %s', (view, attribute) => {
        const { html } = show(openPlan(SUPPER), 'table', { view });
        const [drawn, listed] = html.split('</svg>') as [string, string];
        const named = (part: string): string[] =>
            [
                ...part.matchAll(new RegExp(`data-at="\\d+"[^>]* ${attribute}="([^"]+)"|${attribute}="([^"]+)"`, 'g')),
            ].map(([, one, other]) => (one ?? other)!);
        const inWords = named(listed);
        expect(inWords.length).toBeGreaterThan(2);
        expect(new Set(inWords).size).toBe(inWords.length);
        expect(named(drawn)).toEqual(expect.arrayContaining(inWords));
    });

    it('says what is missing where there is nothing to draw', () => {
        expect(show(openPlan('event "Nothing yet" { }'), 'table').html).toContain('There is no cover to lay yet');
        expect(show(openPlan('event "Nothing yet" { }'), 'evening').html).toContain('No times are computed yet');
        expect(show(openPlan('event "Nothing yet" { }'), 'pull').html).toContain('There is nothing to pull yet');
    });
});

describe('the pull panel', () => {
    it('lists what is needed, owned and short, and marks what is short with words', () => {
        const place = openPlan(SUPPER);
        const page = show(place, 'pull');
        const row = /<tr class="short">.*?<\/tr>/
            .exec(page.html)![0]
            .replace(/<[^>]+>/g, ' ')
            .replace(/\s+/g, ' ');
        expect(row).toBe(' soup bowl 24 24 20 ▲ 4 short ');
        expect(leads(place, page, 'soup bowl')).toEqual([expect.stringContaining('soup-bowl warmed')]);
        expect(leads(place, page, '20')).toEqual([expect.stringContaining('20 soup-bowl')]);
    });

    it('calls nothing enough that is not counted', () => {
        const said = (house: string): string => {
            const text = SUPPER.replace('house "Hall" { own 40 soup-spoon, 20 soup-bowl }', house);
            return texts(show(openPlan(text), 'pull').html, /p id="short"/)[0]!;
        };
        expect(said('')).toBe('Not known whether anything is short: nothing of the list is counted.');
        expect(said('house "Hall" { own 40 soup-spoon }')).toMatch(
            /^Nothing that is counted is short; \d+ are not counted\.$/,
        );
        expect(said('house "Hall" { own 20 soup-bowl }')).toMatch(
            /^1 piece of the list is short; \d+ are not counted\.$/,
        );
    });

    it('is copied as CSV', () => {
        const copied = panelCopy(openPlan(SUPPER), { uri: '', panel: 'pull', choices: {} }, new ShownPlans());
        expect(copied?.text).toMatch(/^Store,Piece,.*Short.*\r\nFlatware,/);
        expect(copied?.said).toMatch(/^\d+ lines copied as CSV\.$/);
        expect(panelCopy(openPlan(SUPPER), { uri: '', panel: 'table', choices: {} }, new ShownPlans())).toBeNull();
    });
});

describe('the evening panel', () => {
    it('draws lanes over the clock, and leads from each course to its line', () => {
        const place = openPlan(SUPPER);
        const page = show(place, 'evening');
        expect(page.html).toContain('data-lane=');
        expect(leads(place, page, 'Squash soup')).toEqual([expect.stringContaining('course soup "Squash soup"')]);
    });

    it('shows the whole as wide as the page says it is, and a part of it alone', () => {
        const place = openPlan(SUPPER);
        const whole = show(place, 'evening', { size: 'fit', width: '450' }).html;
        expect(whole).toContain('data-width="450"');
        expect(whole).toContain('viewBox="0 0 450 ');
        expect(whole).toContain('data-lane="Called in"');
        const service = show(place, 'evening', { size: 'fit', part: 'service' }).html;
        expect(service).toContain('viewBox="0 0 800 ');
        expect(service).not.toContain('data-lane="Called in"');
        for (const width of ['0', '-4', 'x', '1e12']) {
            expect(show(place, 'evening', { size: 'fit', width, part: 'x' }).html).toContain('<svg');
        }
    });
});

describe('a panel of a text with errors', () => {
    const broken = SUPPER.replace('menu {', '// a line more\nmenu {').replace(
        'soup-spoon, brought',
        'soup-spon, brought',
    );

    it('is marked, and shows the plan from before, led to the lines as they are now', () => {
        const place = openPlan(SUPPER);
        const plans = new ShownPlans();
        const before = show(place, 'table', { step: '1' }, plans);
        change(place, broken);
        const after = show(place, 'table', { step: '1' }, plans);
        expect([before.isStale, after.isStale]).toEqual([false, true]);
        expect(after.html).toContain('Out of date: 1 error stands in the text. This is the plan from before.');
        expect(after.html.slice(after.html.indexOf('<svg'))).toBe(before.html.slice(before.html.indexOf('<svg')));
        expect(leads(place, after, 'soup bowl|service plate')).toBeDefined();
        change(place, SUPPER);
        expect(show(place, 'table', { step: '1' }, plans)).toEqual(before);
    });

    it('leads past a change to the same words', () => {
        const place = openPlan(SUPPER);
        const plans = new ShownPlans();
        show(place, 'pull', {}, plans);
        change(place, SUPPER.replace('event "', '\n\nevent "').replace('contains celery', 'contains celeryy'));
        const page = show(place, 'pull', {}, plans);
        expect(page.isStale).toBe(true);
        expect(leads(place, page, 'soup bowl')).toHaveLength(1);
    });

    it('leads past a change to what stands in blocks that have not changed', () => {
        const place = openPlan(SUPPER);
        const plans = new ShownPlans();
        show(place, 'pull', {}, plans);
        change(place, SUPPER.replace('event "', '\n\nevent "').replace('seated 19:00', 'seated 19:0'));
        const page = show(place, 'pull', {}, plans);
        expect(page.isStale).toBe(true);
        expect(leads(place, page, 'soup bowl')).toEqual(['served in soup-bowl warmed to 60 °C at 64 °C']);
    });

    it('does not speak of what is drawn where nothing is', () => {
        const { html } = show(openPlan('event "Nothing yet" { guests 8 { 9 vegetarian } }'), 'table');
        expect(html).toMatch(/Not to be relied on: \d errors? stands? in the text\.</);
    });

    it('shows the text as it is when asked to, or when there is nothing from before', () => {
        const place = openPlan(SUPPER);
        const plans = new ShownPlans();
        show(place, 'table', {}, plans);
        change(place, broken);
        const anyway = show(place, 'table', { anyway: 'on' }, plans);
        expect(anyway.html).toContain('Not to be relied on: 1 error stands in the text.');
        expect(show(openPlan(broken), 'table').html).toContain('Not to be relied on');
    });
});

describe('a plan that is gone', () => {
    it('is told of, as one that has changed', async () => {
        const text: FileText = { state: 'read', text: SUPPER };
        const workspace = new Workspace({
            list: () => Promise.resolve(['a.cover', 'b.cover']),
            read: () => Promise.resolve(text),
        });
        const told: unknown[] = [];
        const connection = {
            onRequest: () => undefined,
            sendNotification: (method: string, params: unknown) => told.push([method, params]),
        } as unknown as Connection;
        const client = (): typeof CLIENT => ({ ...CLIENT, showsPanels: true });
        answerPanels(connection, workspace, client, () => Promise.resolve());
        await workspace.addFolder(FOLDER);
        expect(told).toEqual([]);
        workspace.deletedOnDisk(`${FOLDER}/a.cover`);
        expect(told).toEqual([['underliner/planChanged', { uri: `${FOLDER}/a.cover` }]]);
    });
});
