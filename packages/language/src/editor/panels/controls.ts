/** The controls of panels, as HTML. What they choose goes back to the server by its name. */
import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';

export interface Option {
    readonly value: string;
    readonly words: string;
}

/** A list to choose one from. */
export function choiceOf(name: string, words: string, options: readonly Option[], chosen: string): Element {
    return h('label', { class: 'choice' }, [
        h('span', words),
        h(
            'select',
            { id: `choose-${name}`, dataChoice: name },
            options.map(({ value, words: each }) => h('option', { value, selected: value === chosen }, each)),
        ),
    ]);
}

/** A box to tick. */
export function tick(name: string, words: string, isTicked: boolean): Element {
    return h('label', { class: 'choice' }, [
        h('input', { id: `choose-${name}`, type: 'checkbox', dataChoice: name, checked: isTicked }),
        h('span', words),
    ]);
}

export interface Press extends Option {
    readonly isPressed?: boolean;
    readonly disabled?: boolean;
    /** The key that presses it from anywhere in the panel. */
    readonly key?: string;
    /** Where the words alone don't say it. */
    readonly label?: string;
}

/** A button that chooses a value. */
export function press(
    id: string,
    name: string,
    { value, words, isPressed, disabled, key, label = words }: Press,
): Element {
    return h(
        'button',
        {
            id,
            type: 'button',
            dataChoice: name,
            dataValue: value,
            disabled,
            ariaPressed: isPressed === undefined ? undefined : String(isPressed),
            ariaKeyShortcuts: key,
            ariaLabel: label === words ? undefined : label,
            title: key === undefined ? undefined : `${label} (key ${key})`,
        },
        words,
    );
}

/** Which of the things that are written at one place something stands for; a picture names it by the same words. */
export interface Thing {
    readonly dataPiece?: string;
    readonly dataTable?: string;
}

/** Words that lead to where they were written; plain ones where that is nowhere. */
export function leadsTo(at: number | undefined, words: string, label?: string, thing: Thing = {}): ElementContent {
    return at === undefined
        ? h('span', words)
        : h('button', { type: 'button', class: 'source', dataAt: at, ariaLabel: label, ...thing }, words);
}

/** A figure of a table; its column's head stands before it where there is no room for columns. */
export function figureCell(head: string, content: ElementContent[]): Element {
    return h('td', { class: 'figure', dataHead: head }, content);
}

/** A picture that can be larger than its panel. */
export function pictureBox(svg: string, label: string): Element {
    return h('div', { id: 'picture', class: 'picture', tabIndex: 0, role: 'group', ariaLabel: label }, [
        // Our own drawing, whose words are escaped.
        { type: 'raw', value: svg.trim() } as unknown as Element,
    ]);
}
