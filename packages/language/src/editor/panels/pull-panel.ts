import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { listOf, listText } from '../../list.js';
import { pieceCalled } from '../../output/sheets/evening.js';
import { pullByStore } from '../../output/stores.js';
import { counted } from '../../rules/wording.js';
import type { PullLine } from '../../service/types.js';
import { figureCell, leadsTo } from './controls.js';
import type { Panel, PanelInput } from './panel.js';
import { ownedAt, usedAt } from './piece-sources.js';

interface Column {
    readonly head: string;
    readonly about: string;
    readonly figure: (line: PullLine) => number | undefined;
    /** Only where there is something to say. */
    readonly isRare?: boolean;
}

const COLUMNS: readonly Column[] = [
    { head: 'Needed', about: 'in use at once, or brought over the evening', figure: ({ needed }) => needed },
    { head: 'Extra covers', about: 'for covers set beyond the guests', figure: ({ overset }) => overset, isRare: true },
    { head: 'Washed', about: 'given back by washing in time', figure: ({ washed }) => washed, isRare: true },
    { head: 'Spare', about: 'the house’s share, in whole pieces', figure: ({ spare }) => spare },
    { head: 'Pull', about: 'to be fetched', figure: ({ pull }) => pull },
    { head: 'Rented', about: 'comes with the van', figure: ({ rented }) => rented, isRare: true },
    { head: 'Owned', about: 'the house has', figure: ({ owned }) => owned },
    { head: 'Short', about: 'missing', figure: ({ short }) => short },
];

/** What is fetched from the store, what the house has, and what is missing. */
export const pullPanel: Panel = {
    title: 'Pull list',
    show(input) {
        const { plan, service } = input.checked;
        const stores = pullByStore(plan, service);
        if (stores.length === 0) {
            return { missing: 'There is nothing to pull yet: the plan has no menu, or no guests who eat of it.' };
        }
        const { short, words } = shortage(service.pull);
        const columns = COLUMNS.filter(
            ({ isRare, figure }) => !isRare || service.pull.some((line) => (figure(line) ?? 0) > 0),
        );
        return [
            h('div', { class: 'tools' }, [
                h('p', { id: 'short', class: short > 0 ? 'short' : undefined }, words),
                h('button', { id: 'copy', type: 'button', dataCopy: true }, 'Copy as CSV'),
            ]),
            h('div', { id: 'list', class: 'list', tabIndex: 0, role: 'group', ariaLabel: 'Pull list' }, [
                h('table', [
                    h('thead', [
                        h('tr', [
                            h('th', { scope: 'col' }, 'Piece'),
                            ...columns.map(({ head, about }) =>
                                h('th', { scope: 'col', class: 'figure', title: about }, head),
                            ),
                        ]),
                    ]),
                    ...stores.map(({ store, lines }) =>
                        h('tbody', [
                            h('tr', [
                                h('th', { scope: 'rowgroup', class: 'store', colSpan: columns.length + 1 }, store),
                            ]),
                            ...lines.map((line) => row(input, line, columns)),
                        ]),
                    ),
                ]),
            ]),
        ];
    },
    copy({ checked }) {
        const list = listOf(checked, 'pull');
        return list && { text: listText(list, 'csv'), said: `${counted(list.rows.length, 'line')} copied as CSV.` };
    },
};

/** Of what nobody counts, nobody knows whether it is short. */
function shortage(lines: readonly PullLine[]): { readonly short: number; readonly words: string } {
    const short = lines.filter((line) => line.short > 0).length;
    const uncounted = lines.filter(({ owned, short }) => owned === undefined && short === 0).length;
    const are = (pieces: number): string => (pieces === 1 ? 'is' : 'are');
    if (uncounted === lines.length) {
        return { short, words: 'Not known whether anything is short: nothing of the list is counted.' };
    }
    const said =
        short > 0
            ? `${counted(short, 'piece')} of the list ${are(short)} short`
            : uncounted > 0
              ? 'Nothing that is counted is short'
              : 'Nothing is short';
    return { short, words: `${said}${uncounted > 0 ? `; ${uncounted} ${are(uncounted)} not counted` : ''}.` };
}

function row({ checked, sources }: PanelInput, line: PullLine, columns: readonly Column[]): Element {
    const called = pieceCalled(checked.plan, line.piece);
    const label = `${called}: show where it is used`;
    const thing = { dataPiece: line.piece };
    return h('tr', { class: line.short > 0 ? 'short' : undefined }, [
        h('th', { scope: 'row' }, [leadsTo(sources.numberOf(usedAt(checked, line.piece)), called, label, thing)]),
        ...columns.map(({ head, figure }) => figureCell(head, cell(head, figure(line)))),
    ]);

    function cell(head: string, figure: number | undefined): ElementContent[] {
        switch (head) {
            case 'Owned': {
                // A piece that the house does not list may be one it never counts.
                const at = figure === undefined ? undefined : sources.numberOf(ownedAt(checked.plan, line.piece));
                const words = figure === undefined ? 'not counted' : String(figure);
                return [leadsTo(at, words, `${words} owned: show where the house says so`, thing)];
            }
            case 'Short':
                return figure === 0 ? [] : [h('strong', [h('span', { ariaHidden: 'true' }, '▲ '), `${figure} short`])];
            default:
                return figure === 0 && head !== 'Needed' ? [] : [{ type: 'text', value: String(figure) }];
        }
    }
}
