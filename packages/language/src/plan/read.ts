import type * as ast from '../grammar/generated/ast.js';
import type { Parsed } from '../grammar/parse.js';
import { readDiet, readKind, readLocalCode, readPiece, readSubstance } from './read-cupboard.js';
import { readEvent, readSeating } from './read-event.js';
import { readHouse, readRoom, readTasks, readTeam } from './read-house.js';
import { readMenu } from './read-menu.js';
import { ofType, Scribe } from './read-scribe.js';
import type { Reading } from './types.js';

/**
 * Reads one file's syntax tree as plain data. Looks at no other file, so its result can be kept for as long as the text stays.
 * @param file the name that origins carry: workspace-relative, or `cupboard/…`
 */
export function readFile(file: string, text: string, parsed: Parsed): Reading {
    const scribe = new Scribe(file, text);
    const { tree } = parsed;
    const items = tree.items ?? [];
    const of = <U extends ast.Item>(type: U['$type']): U[] => ofType<ast.Item, U>(items, type);
    const reading = {
        file,
        uses: (tree.uses ?? []).flatMap((use) => scribe.textOf(use, 'path') ?? []),
        events: of<ast.Event>('Event').map((node) => readEvent(scribe, node)),
        menus: of<ast.Menu>('Menu').map((node) => readMenu(scribe, node)),
        houses: of<ast.House>('House').map((node) => readHouse(scribe, node)),
        rooms: of<ast.Room>('Room').map((node) => readRoom(scribe, node)),
        teams: of<ast.Team>('Team').map((node) => readTeam(scribe, node)),
        tasks: of<ast.Tasks>('Tasks').flatMap((node) => readTasks(scribe, node)),
        guests: of<ast.Seating>('Seating').flatMap((node) => readSeating(scribe, node)),
        pieces: of<ast.Piece>('Piece').map((node) => readPiece(scribe, node)),
        kinds: of<ast.Kind>('Kind').map((node) => readKind(scribe, node)),
        substances: of<ast.Substance>('Substance').map((node) => readSubstance(scribe, node)),
        diets: of<ast.Diet>('Diet').map((node) => readDiet(scribe, node)),
        codes: of<ast.LocalCode>('LocalCode').map((node) => readLocalCode(scribe, node)),
        syntax: parsed.problems.map(({ start, end, ...said }) => ({ ...said, origin: { file, start, end } })),
    };
    for (const { word, meant, start, end } of parsed.mistyped ?? []) {
        scribe.misspelt.push({ word, meant, origin: { file, start, end } });
    }
    scribe.noteUnclosed(tree);
    const { occurrences, written, unitProblems, repeats, misspelt } = scribe;
    return { ...reading, occurrences, written, unitProblems, repeats, misspelt };
}
