import type * as ast from '../grammar/generated/ast.js';
import type { Parsed } from '../grammar/parse.js';
import { keepCompiled } from '../keep-compiled.js';
import type { Origin } from './origin.js';
import { readDiet, readKind, readLocalCode, readPiece, readSubstance } from './read-cupboard.js';
import { readEvent, readSeating } from './read-event.js';
import { readHouse, readRoom, readTasks, readTeam } from './read-house.js';
import { readMenu } from './read-menu.js';
import { moveAll, NOTES, notesOf, Scribe, type Notes, type ReadCourse } from './read-scribe.js';
import type { Misspelt, Reading, SyntaxFinding, Written } from './types.js';

type Lists = Omit<Reading, 'file' | 'uses' | 'syntax'>;
/** The lists that blocks are read into; the others hold what was noted on the way. */
type BlockList = Exclude<keyof Lists, keyof Notes>;

/** What each sort of block is read as. Their order is that of a reading's notes, whatever the order of the text. */
const BLOCKS = {
    Event: { list: 'events', read: one(readEvent) },
    Menu: { list: 'menus', read: one(readMenu) },
    House: { list: 'houses', read: one(readHouse) },
    Room: { list: 'rooms', read: one(readRoom) },
    Team: { list: 'teams', read: one(readTeam) },
    Tasks: { list: 'tasks', read: readTasks },
    Seating: { list: 'guests', read: readSeating },
    Piece: { list: 'pieces', read: one(readPiece) },
    Kind: { list: 'kinds', read: one(readKind) },
    Substance: { list: 'substances', read: one(readSubstance) },
    Diet: { list: 'diets', read: one(readDiet) },
    LocalCode: { list: 'codes', read: one(readLocalCode) },
} as const satisfies {
    [Type in ast.Item['$type']]: {
        readonly list: BlockList;
        readonly read: (scribe: Scribe, node: Extract<ast.Item, { $type: Type }>) => readonly unknown[];
    };
};

const TYPES = Object.keys(BLOCKS) as ast.Item['$type'][];

function one<Node, Value>(read: (scribe: Scribe, node: Node) => Value) {
    return (scribe: Scribe, node: Node): readonly Value[] => [read(scribe, node)];
}

interface Block {
    readonly type: ast.Item['$type'];
    readonly values: readonly unknown[];
    readonly notes: Notes;
}

/** A stretch of a file, read: whole blocks and what stands between them. */
export interface ReadStretch {
    readonly uses: Reading['uses'];
    readonly blocks: readonly Block[];
    readonly syntax: readonly SyntaxFinding[];
    /** Noted of the stretch as a whole, behind what its blocks have noted. */
    readonly misspelt: readonly Misspelt[];
    readonly unclosed: readonly Written[];
    /** Those in it that need not be read again while their text stays. */
    readonly courses: readonly ReadCourse[];
    /** Every place in it, each once, but for those of these courses. */
    readonly origins: readonly Origin[];
}

/**
 * Reads the syntax tree of a stretch as plain data. Looks at nothing else, so the result can be kept for as long as the
 * text of the stretch stays.
 * @param offset where in the file the stretch begins
 */
export function readStretch(file: string, text: string, parsed: Parsed, offset = 0): ReadStretch {
    const { tree } = parsed;
    const scribe = keepCompiled(new Scribe(file, text, offset));
    const uses = (tree.uses ?? []).flatMap((use) => scribe.pathOf(use) ?? []);
    const origins = [...scribe.origins];
    const courses: ReadCourse[] = [];
    const blocks = (tree.items ?? []).map((node): Block => {
        const notes = keepCompiled(new Scribe(file, text, offset));
        const read = BLOCKS[node.$type].read as (scribe: Scribe, node: ast.Item) => readonly unknown[];
        const values = read(notes, node);
        origins.push(...notes.origins);
        courses.push(...notes.courses);
        return { type: node.$type, values, notes: notesOf(notes) };
    });
    const at = (start: number, end: number): Origin => {
        const origin = { file, start: start + offset, end: end + offset };
        origins.push(origin);
        return origin;
    };
    const syntax = parsed.problems.map(({ start, end, ...said }) => ({ ...said, origin: at(start, end) }));
    const misspelt = (parsed.mistyped ?? []).map(({ word, meant, start, end }) => ({
        word,
        meant,
        origin: at(start, end),
    }));
    const whole = keepCompiled(new Scribe(file, text, offset));
    whole.noteUnclosed(tree);
    origins.push(...whole.origins);
    return { uses, blocks, syntax, misspelt, unclosed: whole.written, courses, origins };
}

/** A file out of its stretches, in the order of the text. */
export function joinStretches(file: string, stretches: readonly ReadStretch[]): Reading {
    const lists = Object.fromEntries(
        [...TYPES.map((type) => BLOCKS[type].list), ...NOTES].map((list): [keyof Lists, unknown[]] => [list, []]),
    ) as Record<keyof Lists, unknown[]>;
    const byType = new Map(TYPES.map((type): [string, Block[]] => [type, []]));
    for (const { blocks } of stretches) {
        for (const block of blocks) {
            byType.get(block.type)!.push(block);
        }
    }
    for (const type of TYPES) {
        const list = lists[BLOCKS[type].list];
        for (const { values, notes } of byType.get(type)!) {
            pushAll(list, values);
            for (const note of NOTES) {
                pushAll(lists[note], notes[note]);
            }
        }
    }
    for (const { misspelt, unclosed } of stretches) {
        pushAll(lists.misspelt, misspelt);
        pushAll(lists.written, unclosed);
    }
    return {
        file,
        uses: stretches.flatMap(({ uses }) => uses),
        ...(lists as unknown as Lists),
        syntax: stretches.flatMap(({ syntax }) => syntax),
    };
}

function pushAll(list: unknown[], more: readonly unknown[]): void {
    for (const each of more) {
        list.push(each);
    }
}

/**
 * Moves a stretch that now begins elsewhere. Its values stay the very same, so that what was worked out from them alone
 * holds on; their places are the one thing of a reading that ever changes, and only here. Whoever moves a stretch has
 * dropped everything that speaks of the text as it was.
 */
export function moveStretch({ origins, courses }: ReadStretch, by: number): void {
    moveAll(origins, by);
    for (const course of courses) {
        moveAll(course.origins, by);
    }
}

/**
 * Reads one file's syntax tree as plain data. Looks at no other file, so its result can be kept for as long as the text stays.
 * @param file the name that origins carry: workspace-relative, or `cupboard/…`
 */
export function readFile(file: string, text: string, parsed: Parsed): Reading {
    return joinStretches(file, [readStretch(file, text, parsed)]);
}
