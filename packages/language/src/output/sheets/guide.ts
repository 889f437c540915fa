import { listed } from '../../rules/wording.js';
import type { Cover, CoverGlass, CoverPiece } from '../../service/types.js';
import { capital, courseTitle, pieceCalled, type SheetSource } from './evening.js';
import { coverBlocks, dishesCalled } from './covers.js';
import { guestSignals } from './signals.js';
import type { Block, Cell, Sheet } from './sheet.js';

/** What each piece in front of you is for, course by course: for new staff, and for guests who would rather not ask. */
export function guideSheet(source: SheetSource): Sheet | undefined {
    const { plan, service } = source;
    const { variations } = service;
    return variations.length === 0 || !plan.menu
        ? undefined
        : {
              name: 'guide',
              title: 'What is it all for?',
              subtitle: 'Every piece in front of you, course by course',
              blocks: [
                  {
                      sort: 'text',
                      text: 'Begin with what lies farthest from the plate and work inward, a piece or a pair for each course. Nobody minds a mistake: a piece that is used up is brought again.',
                  },
                  ...coverBlocks(source, variations, dishesCalled),
                  { sort: 'heading', text: 'Course by course' },
                  courseTable(source),
                  { sort: 'heading', text: 'Without a word' },
                  { sort: 'list', items: guestSignals(plan) },
              ],
          };
}

/** A line for every dish; where the same dish is eaten otherwise beside other dishes, a line for each way. */
function courseTable({ plan, service }: SheetSource): Block {
    const rows = new Map<string, Cell[]>();
    const courses = [
        ...(service.bread ? [-1] : []),
        ...(plan.menu?.courses.map(({ index }) => index) ?? []),
        ...(service.coffee ? [plan.menu?.courses.length ?? 0] : []),
    ];
    for (const course of courses) {
        for (const { cover, dishes } of service.variations) {
            const title = dishes[course]?.title ?? courseTitle(plan, course);
            const pieces = piecesOf(cover, course).map((piece) =>
                placed(piece, cover, pieceCalled(plan, piece.piece.name)),
            );
            const glasses = glassesOf(cover, course).map((glass) =>
                glassPlaced(glass, cover, pieceCalled(plan, glass.piece.name)),
            );
            const row: Cell[] = [
                { text: title, strong: true },
                pieces.length > 0 ? capital(listed(pieces)) : 'Your fingers',
                capital(listed(glasses)),
            ];
            rows.set(JSON.stringify(row), row);
        }
    }
    return {
        sort: 'table',
        columns: [{ head: 'Course', share: 0.26 }, { head: 'You eat with' }, { head: 'And drink from', share: 0.22 }],
        rows: [...rows.values()],
    };
}

const piecesOf = (cover: Cover, course: number): CoverPiece[] =>
    [...cover.left, ...cover.right, ...cover.above, ...cover.saucer, ...cover.breadPlate, ...cover.brought].filter(
        (piece) => piece.course === course,
    );

const glassesOf = (cover: Cover, course: number): CoverGlass[] =>
    [...cover.glasses, ...cover.broughtGlasses].filter((glass) => glass.course === course && !glass.water);

/** `salad fork, outermost on the left`. */
function placed(piece: CoverPiece, cover: Cover, called: string): string {
    if (piece.when === 'brought') {
        return `the ${called} brought with it`;
    }
    const row = piece.side === 'left' ? cover.left : piece.side === 'right' ? cover.right : undefined;
    if (row) {
        return `the ${called} (${piece.side}, ${fromOutside(row.indexOf(piece), row.length)})`;
    }
    const where = { above: 'above the plate', saucer: 'on the saucer', 'bread-plate': 'on the bread plate' };
    return `the ${called} (${where[piece.side as keyof typeof where]})`;
}

function fromOutside(index: number, count: number): string {
    if (count === 1) {
        return 'beside the plate';
    }
    return index === 0 ? 'outermost' : index === count - 1 ? 'next to the plate' : `number ${index + 1} from outside`;
}

function glassPlaced(glass: CoverGlass, cover: Cover, called: string): string {
    const index = cover.glasses.indexOf(glass);
    return index < 0 ? `the ${called} brought with it` : `the ${called} (number ${index + 1} from the knife)`;
}
