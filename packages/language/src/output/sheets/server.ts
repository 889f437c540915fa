import { counted, listed } from '../../rules/wording.js';
import type { SeatedGuest } from '../../service/seats/types.js';
import { tablePicture } from '../drawing/pictures.js';
import { coverBlocks, dishesCalled } from './covers.js';
import { movementsTable } from './courses.js';
import { plainChoice } from './custom-words.js';
import {
    allergenPlates,
    capital,
    CONTACT,
    courseTitle,
    dishOf,
    guestCalled,
    seatNeeds,
    type SheetSource,
} from './evening.js';
import { platesTable } from './plates-at-table.js';
import { cupChecks, glassChecks, poursTable } from './pours.js';
import { TEXT_WIDTH, type Block, type Cell, type Sheet } from './sheet.js';
import { guestSignals } from './signals.js';

interface Station {
    readonly name: string;
    /** `server 3`; where no run sheet tells who has which table, everybody who serves. */
    readonly server: string;
    readonly tables: readonly string[];
}

/** Share of the page's width that the picture of a table takes. */
const SHARE = 0.58;
/** A plate's mark is another in each course: those stand in the list below the picture, where there is room for the courses. */
const FOR_SHEETS = { printedWidth: TEXT_WIDTH * SHARE, needs: 'by-mark', marks: false } as const;

/** One sheet for each server: the station's covers, seats, steps, pours and signals. */
export function serverSheets(source: SheetSource): Sheet[] {
    return stationsOf(source).map((station) => stationSheet(source, station));
}

function stationsOf({ service }: SheetSource): Station[] {
    const { run } = service;
    if (!run) {
        return [{ name: 'server', server: 'server', tables: service.seats.tables.map(({ name }) => name) }];
    }
    const servers = [...new Set(run.tables.map(({ server }) => server))].toSorted((a, b) => a - b);
    return servers.map((server) => {
        const { name } = run.people[server]!;
        return {
            name: name.replaceAll(' ', '-'),
            server: name,
            tables: run.tables.filter((table) => table.server === server).map((table) => table.name),
        };
    });
}

function stationSheet(source: SheetSource, { name, server, tables }: Station): Sheet {
    const { plan, service } = source;
    const guests = service.seats.guests.filter(({ table }) => tables.includes(table));
    const variations =
        guests.length > 0
            ? [...new Set(guests.map(({ variation }) => variation))].toSorted((a, b) => a - b)
            : service.variations.map(({ index }) => index);
    const count = guests.length > 0 ? guests.length : service.guestCount;
    return {
        name,
        title: capital(server),
        subtitle:
            tables.length > 0
                ? `${tables.length > 1 ? 'Tables' : 'Table'} ${listed(tables)} · ${counted(count, 'guest')}`
                : counted(count, 'guest'),
        blocks: [
            ...seats(source, tables),
            { sort: 'heading', text: 'Covers' },
            ...coverBlocks(
                source,
                variations.map((index) => service.variations[index]!),
                (variation) => {
                    const own = guests.filter((guest) => guest.variation === variation.index).length;
                    return `${dishesCalled(variation)}, ${counted(own > 0 ? own : variation.count, 'cover')}`;
                },
            ),
            ...checks(source, server, tables),
            { sort: 'heading', text: 'Step by step' },
            { sort: 'text', text: sides(source) },
            movementsTable(source, variations, tables),
            ...poursTable(source, guests),
            { sort: 'heading', text: 'What guests say without a word' },
            { sort: 'list', items: guestSignals(plan) },
        ],
    };
}

function seats(source: SheetSource, tables: readonly string[]): Block[] {
    const { service } = source;
    return tables.flatMap((table): Block[] => {
        const guests = service.seats.guests.filter((guest) => guest.table === table);
        const laid = service.seats.tables.find(({ name }) => name === table)?.laid ?? guests.length;
        const svg = tablePicture(source, table, FOR_SHEETS);
        return [
            { sort: 'heading', text: `Table ${table}: ${counted(guests.length, 'guest')}, ${counted(laid, 'cover')}` },
            ...(svg
                ? [
                      {
                          sort: 'picture' as const,
                          svg,
                          caption: `Table ${table}: seats, and in letters what guests need`,
                          share: SHARE,
                      },
                  ]
                : []),
            ...needsTable(source, guests),
            ...(guests.length > 0 ? [platesTable(source, table)] : []),
        ];
    });
}

/** Who needs what; where guests are named, who sits where. */
function needsTable(source: SheetSource, guests: readonly SeatedGuest[]): Block[] {
    const isNamed = guests.some((guest) => guestCalled(source, guest) !== '');
    const rows = guests.flatMap((guest): Cell[][] => {
        const needs = seatNeeds(source, guest);
        return isNamed || needs !== ''
            ? [
                  [
                      String(guest.seat),
                      needs === '' ? '' : { text: needs, strong: true },
                      ...(isNamed ? [guestCalled(source, guest)] : []),
                  ],
              ]
            : [];
    });
    return rows.length === 0
        ? [{ sort: 'text', text: 'Nobody here has told of a need.' }]
        : [
              {
                  sort: 'table',
                  columns: [
                      { head: 'Seat', figures: true, share: 0.09 },
                      { head: rows.length < guests.length ? 'Needs; the others told of none' : 'Needs' },
                      ...(isNamed ? [{ head: 'Guest', share: 0.3 }] : []),
                  ],
                  rows,
              },
          ];
}

function checks(source: SheetSource, server: string, tables: readonly string[]): Block[] {
    const isOwn = ({ table }: SeatedGuest): boolean => tables.includes(table);
    const plates = allergenPlates(source).filter(({ guest }) => isOwn(guest));
    const glasses = glassChecks(source, isOwn);
    const cups = cupChecks(source, isOwn);
    const sorts = [
        ...(plates.length > 0 ? ['plates'] : []),
        ...(glasses.length > 0 ? ['glasses'] : []),
        ...(cups.length > 0 ? ['cups'] : []),
    ];
    return sorts.length === 0
        ? []
        : [
              {
                  sort: 'heading',
                  text: `Two people check each of these ${listed(sorts)}`,
              },
              {
                  sort: 'caution',
                  text: `${CONTACT} In doubt it goes back.`,
              },
              ...plates.map(({ course, plate, guest, marker }): Block => ({
                  sort: 'check',
                  text: `${marker} · ${guest.table} seat ${guest.seat} · ${dishOf(source, course, plate.dish)?.title ?? courseTitle(source.plan, course)}${
                      plate.leftOff.length > 0 ? `, without ${listed(plate.leftOff)}` : ''
                  }`,
                  by: ['pass', server],
              })),
              ...glasses,
              ...cups,
          ];
}

function sides({ plan, service }: SheetSource): string {
    const { customs } = plan;
    const stated = service.facts.flatMap(({ dish }) =>
        dish.served.side ? [`${dish.title} from the ${dish.served.side.side}`] : [],
    );
    return [
        `Serve food ${plainChoice('serve-from', customs)}${stated.length > 0 ? ` (${listed(stated)})` : ''}, clear ${plainChoice('clear-from', customs)}, pour from the right.`,
        `Begin with ${plainChoice('served-first', customs)}.`,
        `Clear ${plainChoice('clear-first', customs)}.`,
    ].join(' ');
}
