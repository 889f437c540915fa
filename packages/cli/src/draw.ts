import { check, draw, type Checked, type Picture } from 'underliner-language';
import { CannotRun } from './cannot-run.js';
import { CANNOT_RUN, tellFaults } from './faults.js';
import { oneInput } from './inputs.js';
import { readLetters } from './letters.js';
import { mustNotReplace, writeMade, type MadeOptions } from './made.js';

/** A page of A4 at 200 dots to the inch. */
const USUAL_WIDTH = 1600;
const WIDEST = 10_000;

export interface DrawOptions extends MadeOptions {
    readonly table?: string;
    readonly room?: boolean;
    readonly evening?: boolean;
    readonly dishes?: number;
    readonly step?: number;
    readonly png?: boolean;
    /** Of a PNG, in pixels. */
    readonly width?: number;
    readonly stdinName?: string;
    readonly root?: string;
}

/** `underliner draw`: the cover, a table or the room to scale, or the evening over the clock, as SVG or PNG. */
export async function runDraw(path: string, options: DrawOptions): Promise<number> {
    const input = oneInput(path, options);
    mustNotReplace(input, options, 'picture');
    const width = pixels(options);
    const checked = check(input.file, input.files);
    if (tellFaults(input.shown, checked) > 0) {
        return CANNOT_RUN;
    }
    const svg = draw(checked, pictureOf(options));
    if (svg === undefined) {
        throw new CannotRun(whyNot(checked, options));
    }
    writeMade(width === undefined ? svg : await png(svg, width), options);
    return 0;
}

/** How wide a PNG becomes; nothing where an SVG is wanted. */
function pixels({ png, width, output }: DrawOptions): number | undefined {
    const isPng = png === true || (output?.toLowerCase().endsWith('.png') ?? false);
    if (width !== undefined && !isPng) {
        throw new CannotRun('An SVG has no width in pixels. Add `--png` to `--width`.');
    }
    if (width !== undefined && (width < 1 || width > WIDEST)) {
        throw new CannotRun(`A picture is 1 to ${WIDEST} pixels wide; ${width} is not.`);
    }
    return isPng ? (width ?? USUAL_WIDTH) : undefined;
}

async function png(svg: string, width: number): Promise<Uint8Array> {
    const { svgPng } = await import('./png.js');
    return svgPng(svg, { width, letters: readLetters() });
}

function pictureOf({ table, room, evening, dishes = 1, step }: DrawOptions): Picture {
    const wanted = [
        table !== undefined && '--table',
        room && '--room',
        evening && '--evening',
        step !== undefined && '--step',
    ].filter(Boolean);
    if (wanted.length > 1) {
        throw new CannotRun(`One picture at a time: ${wanted.join(' or ')}.`);
    }
    if (table !== undefined) {
        return { of: 'table', table };
    }
    if (evening) {
        return { of: 'evening' };
    }
    // People count from 1.
    return room
        ? { of: 'room' }
        : { of: 'cover', variation: dishes - 1, step: step === undefined ? undefined : step - 1 };
}

/** What there is, where a picture of something else was asked for. */
function whyNot({ plan, service }: Checked, { table, room, evening, dishes = 1, step }: DrawOptions): string {
    const { variations, tables } = service;
    if (room) {
        return plan.room ? 'The room does not say how wide and how deep it is.' : 'The plan has no room.';
    }
    if (evening) {
        const missing = [
            ...(service.guestCount > 0 ? [] : ['guests']),
            ...((plan.menu?.courses.length ?? 0) > 0 ? [] : ['a menu']),
            ...(tables.length > 0 ? [] : ['tables']),
            ...(plan.team ? [] : ['a team with servers']),
        ];
        return `Nothing tells the times of this evening. The plan needs ${missing.join(', ') || 'servers'}.`;
    }
    if (table !== undefined) {
        const names = tables.map(({ name }) => name);
        return names.length === 0
            ? 'The plan has no tables.'
            : `The room has no table \`${table}\`; it has ${names.join(', ')}.`;
    }
    const variation = variations[dishes - 1];
    if (!variation) {
        return variations.length === 0
            ? 'The plan has no menu to lay a cover for.'
            : `The covers are: ${variations.map(({ label }, index) => `${index + 1} ${label}`).join('; ')}.`;
    }
    return `The evening has ${variation.steps.length} steps at this cover, and none numbered ${step}.`;
}
