import type { Origin } from '../plan/origin.js';
import {
    asJoint,
    bracesIn,
    commentsIn,
    isBlank,
    lineStart,
    lineStop,
    linesOf,
    marginAt,
    nextLine,
    skipBlanks,
    skipBlanksBack,
    skipEmptyLines,
    skipEmptyLinesBack,
    textOf,
    wordAfter,
    wordBefore,
    wordsOf,
    type Page,
    type Word,
} from './page.js';

/** Replaces the characters from `start` to `end` (UTF-16 units) by `text`. */
export interface TextEdit {
    readonly start: number;
    readonly end: number;
    readonly text: string;
}

/** One thing to do at one place of one file. */
export type Change =
    | { readonly do: 'replace' | 'append'; readonly at: Origin; readonly words: string }
    | { readonly do: 'remove'; readonly at: Origin }
    | { readonly do: 'add-clauses'; readonly at: Origin; readonly clauses: string[] }
    | { readonly do: 'move'; readonly at: Origin; readonly before: Origin }
    | { readonly do: 'add-block'; readonly at: Origin; readonly where: 'before' | 'after'; readonly block: string };

/** Between two clauses that share a line. */
export const GAP = '   ';

/** One change as text; `undefined` where the text is no longer what the rule saw. */
export function writeChange(page: Page, change: Change): TextEdit[] | undefined {
    if (change.at.end > page.text.length) {
        return undefined;
    }
    switch (change.do) {
        case 'replace':
            return replaceWords(page, change.at, change.words);
        case 'append': {
            const gap = /^[,;]/.test(change.words) ? '' : ' ';
            return [{ start: change.at.end, end: change.at.end, text: gap + change.words }];
        }
        case 'remove':
            return [removal(page, change.at)];
        case 'add-clauses':
            return addClauses(page, change.at, change.clauses);
        case 'move':
            return change.before.file === change.at.file ? moveBefore(page, change.at, change.before) : undefined;
        case 'add-block':
            return [addBlock(page, change.at, change.where, change.block)];
    }
}

/** Only the words that differ are touched. */
function replaceWords(page: Page, at: Origin, words: string): TextEdit[] {
    const before = textOf(page, at);
    const old = wordsOf(before).filter((word) => word.sort !== 'comment');
    const now = wordsOf(words);
    const isSame = (a: Word | undefined, b: Word | undefined) =>
        a !== undefined && b !== undefined && before.slice(a.start, a.end) === words.slice(b.start, b.end);
    const most = Math.min(old.length, now.length);
    let head = 0;
    while (head < most && isSame(old[head], now[head])) {
        head += 1;
    }
    let tail = 0;
    while (tail < most - head && isSame(old.at(-1 - tail), now.at(-1 - tail))) {
        tail += 1;
    }
    const lastOld = old.length - tail;
    const lastNow = now.length - tail;
    if (head === lastOld && head === lastNow) {
        return [];
    }
    if (head < lastOld && head < lastNow) {
        // A comma sits right behind its word and a word does not: where one takes the other's place the blank goes along.
        const isOtherGap = head > 0 && (old[head]!.sort === 'comma') !== (now[head]!.sort === 'comma');
        const start = isOtherGap ? old[head - 1]!.end : old[head]!.start;
        const stop = old[lastOld - 1]!.end;
        const isTight = tail > 0 && old[lastOld]!.start === stop && old[lastOld]!.sort !== 'comma';
        const text =
            words.slice(isOtherGap ? now[head - 1]!.end : now[head]!.start, now[lastNow - 1]!.end) +
            (isTight && now[lastNow - 1]!.sort !== 'comma' ? ' ' : '');
        return [keepingComments(page, at.start + start, at.start + stop, text)];
    }
    // Words only come in or only go out: with the blanks before them, or, at the beginning, those after them.
    const edgeOld = head > 0 ? old[head - 1]!.end : 0;
    const edgeNow = head > 0 ? now[head - 1]!.end : 0;
    const stopNow = head > 0 ? (now[lastNow - 1]?.end ?? 0) : (now[lastNow]?.start ?? words.length);
    const stopOld = head > 0 ? (old[lastOld - 1]?.end ?? 0) : (old[lastOld]?.start ?? before.length);
    const text = head < lastNow ? words.slice(edgeNow, stopNow) : '';
    return [keepingComments(page, at.start + edgeOld, at.start + (head < lastOld ? stopOld : edgeOld), text)];
}

/** An edit of a range whose comments stay, after the new text. */
function keepingComments(page: Page, start: number, end: number, text: string): TextEdit {
    const comments = commentsIn(page, start, end).map((comment) => textOf(page, comment));
    if (comments.length === 0) {
        return { start, end, text };
    }
    const breakLine = page.lineEnd + marginAt(page.text, start);
    const startsTight = start > 0 && !/\s/.test(page.text[start - 1]!);
    let kept = text === '' && startsTight ? ' ' : text;
    comments.forEach((comment, index) => {
        kept += (/\S$/.test(kept) ? ' ' : '') + comment;
        const isLast = index === comments.length - 1;
        const needsBreak =
            comment.startsWith('//') && (!isLast || !isBlank(page.text.slice(end, lineStop(page.text, end))));
        kept += needsBreak ? breakLine : '';
    });
    return { start, end, text: kept };
}

/** An item goes with its comma, a clause with its line; comments stay. */
function removal(page: Page, { start, end }: Origin): TextEdit {
    const { text } = page;
    const previous = wordBefore(page, start);
    const next = wordAfter(page, end);
    const jointBefore = asJoint(page, previous);
    const jointAfter = asJoint(page, next);
    if (jointAfter !== undefined) {
        const following = wordAfter(page, jointAfter.end)?.start ?? jointAfter.end;
        const hasComment = commentsIn(page, jointAfter.end, following).length > 0;
        return keepingComments(page, start, hasComment ? skipBlanks(text, jointAfter.end) : following, '');
    }
    if (jointBefore !== undefined) {
        return keepingComments(page, wordBefore(page, jointBefore.start)?.end ?? jointBefore.start, end, '');
    }
    const isFirst = isBlank(text.slice(lineStart(text, start), start));
    const stop = lineStop(text, end);
    const isLast = isBlank(text.slice(end, stop));
    if (isFirst && isLast && commentsIn(page, start, end).length === 0) {
        const lineBegin = lineStart(text, start);
        // The last line of a file without a final line end takes the one before it.
        const from = stop === text.length ? text.slice(0, lineBegin).replace(/\r?\n$/, '').length : lineBegin;
        return { start: from, end: nextLine(text, end), text: '' };
    }
    const closesLine =
        isLast || (next?.sort === 'close' && previous?.sort !== 'open') || skipBlanks(text, end) !== next?.start;
    return !isFirst && closesLine
        ? keepingComments(page, skipBlanksBack(text, start), end, '')
        : keepingComments(page, start, isLast ? end : skipBlanks(text, end), '');
}

/** As the last lines of the block, indented like what stands in it; a block on one line stays on one line. */
function addClauses(page: Page, at: Origin, clauses: readonly string[]): TextEdit[] | undefined {
    const { text } = page;
    const braces = bracesIn(page, at);
    if (braces === undefined) {
        // What opens and does not close is still being typed.
        const isOpen = page.words.some(({ sort, start, end }) => sort === 'open' && start >= at.start && end <= at.end);
        return isOpen ? undefined : [{ start: at.end, end: at.end, text: ` { ${clauses.map(onOneLine).join(GAP)} }` }];
    }
    const { open, close } = braces;
    const last = page.words.findLast((word) => word.start >= open.end && word.end <= close.start);
    if (!text.slice(open.end, close.start).includes('\n')) {
        const line = clauses.map(onOneLine).join(GAP);
        return last === undefined
            ? [{ start: open.end, end: close.start, text: ` ${line} ` }]
            : [{ start: last.end, end: last.end, text: GAP + line + (last.end === close.start ? ' ' : '') }];
    }
    const margin = marginInside(page, at, open, close);
    const afterLast = (last ?? open).end;
    const lineRest = skipBlanks(text, afterLast);
    const place = lineRest === lineStop(text, afterLast) ? lineRest : afterLast;
    const lines = clauses.map((clause) => page.lineEnd + indented(page, clause, margin));
    return [{ start: place, end: place, text: lines.join('') }];
}

/** How the lines of a block are indented: as its own least indented line, else one level more than the block. */
function marginInside(page: Page, thing: Origin, open: Word, close: Word): string {
    let depth = 0;
    let least: string | undefined;
    for (const word of page.words.filter(({ start, end }) => start >= open.end && end <= close.start)) {
        depth -= word.sort === 'close' ? 1 : 0;
        const margin = marginAt(page.text, word.start);
        const startsLine = lineStart(page.text, word.start) + margin.length === word.start;
        if (
            depth === 0 &&
            startsLine &&
            word.sort !== 'close' &&
            (least === undefined || margin.length < least.length)
        ) {
            least = margin;
        }
        depth += word.sort === 'open' ? 1 : 0;
    }
    return least ?? marginAt(page.text, thing.start) + page.indent;
}

function onOneLine(clause: string): string {
    return clause.trim().replace(/\s*\n\s*/g, ' ');
}

/** Lines written with four spaces a level, in the file's own indentation from `margin` on. */
function indented(page: Page, lines: string, margin: string): string {
    return lines
        .trim()
        .split(/\r?\n/)
        .map((line) =>
            line === '' ? '' : margin + line.replace(/^( {4})+/, (spaces) => page.indent.repeat(spaces.length / 4)),
        )
        .join(page.lineEnd);
}

function moveBefore(page: Page, block: Origin, before: Origin): TextEdit[] | undefined {
    if (before.start < block.end && block.start < before.end) {
        return undefined;
    }
    const { text } = page;
    const lines = linesOf(page, block);
    const target = linesOf(page, before);
    if (lines === undefined || target === undefined) {
        const following = wordAfter(page, block.end);
        const isLast = following === undefined || following.sort === 'close';
        return inOrder(
            isLast
                ? { start: skipBlanksBack(text, block.start), end: block.end, text: '' }
                : { start: block.start, end: skipBlanks(text, block.end), text: '' },
            { start: before.start, end: before.start, text: `${textOf(page, block)} ` },
        );
    }
    // The empty lines between it and its neighbour go along.
    const isUpward = block.start > before.start;
    const start = isUpward ? skipEmptyLinesBack(text, lines.start) : lines.start;
    const end = isUpward ? lines.end : skipEmptyLines(text, lines.end);
    const gap = isUpward ? text.slice(start, lines.start) : text.slice(lines.end, end);
    const moved = textOf(page, lines);
    return inOrder(
        { start, end, text: '' },
        { start: target.start, end: target.start, text: moved + (moved.endsWith('\n') ? '' : page.lineEnd) + gap },
    );
}

function inOrder(...edits: readonly TextEdit[]): TextEdit[] {
    return [...edits].sort((a, b) => a.start - b.start);
}

function addBlock(page: Page, beside: Origin, where: 'before' | 'after', block: string): TextEdit {
    const { text, lineEnd } = page;
    const lines = linesOf(page, beside);
    if (lines === undefined) {
        const place = where === 'before' ? beside.start : beside.end;
        return { start: place, end: place, text: where === 'before' ? `${onOneLine(block)} ` : ` ${onOneLine(block)}` };
    }
    const margin = marginAt(text, beside.start);
    const written = indented(page, block, margin);
    // Blocks of the file itself stand apart by an empty line.
    const gap = margin === '' ? lineEnd : '';
    if (where === 'before') {
        return { start: lines.start, end: lines.start, text: written + lineEnd + gap };
    }
    const hasLineEnd = text.slice(0, lines.end).endsWith('\n');
    return { start: lines.end, end: lines.end, text: hasLineEnd ? gap + written + lineEnd : lineEnd + gap + written };
}
