import { fstatSync } from 'node:fs';
import picocolors from 'picocolors';
import type { Severity } from 'underliner-language';

export type ColorChoice = 'auto' | 'always' | 'never';

/**
 * Whether to colour what goes to a channel: the option decides, then NO_COLOR, then FORCE_COLOR, then whether it is a
 * terminal.
 * @param channel 1 for stdout, 2 for stderr
 */
export function wantsColor(choice: ColorChoice, channel: 1 | 2): boolean {
    if (choice !== 'auto') {
        return choice === 'always';
    }
    const { NO_COLOR, FORCE_COLOR, TERM } = process.env;
    if (NO_COLOR !== undefined && NO_COLOR !== '') {
        return false;
    }
    if (FORCE_COLOR !== undefined && FORCE_COLOR !== '') {
        return FORCE_COLOR !== '0' && FORCE_COLOR !== 'false';
    }
    return TERM !== 'dumb' && isTerminal(channel);
}

/** Node's own answer costs 2 ms of loading; a file or a pipe, which a script reads from, is no device. */
function isTerminal(channel: 1 | 2): boolean {
    try {
        return fstatSync(channel).isCharacterDevice() && (channel === 1 ? process.stdout : process.stderr).isTTY;
    } catch {
        return false;
    }
}

export interface Palette {
    readonly severity: Readonly<Record<Severity, (text: string) => string>>;
    readonly place: (text: string) => string;
    readonly quiet: (text: string) => string;
    readonly fix: (text: string) => string;
    readonly added: (text: string) => string;
    readonly removed: (text: string) => string;
}

const plain: Palette = {
    severity: { error: asIs, warning: asIs, info: asIs, hint: asIs },
    place: asIs,
    quiet: asIs,
    fix: asIs,
    added: asIs,
    removed: asIs,
};

function asIs(text: string): string {
    return text;
}

export function palette(isColored: boolean): Palette {
    if (!isColored) {
        return plain;
    }
    const { bold, cyan, dim, blue, green, red, yellow } = picocolors.createColors(true);
    return {
        severity: {
            error: (text) => bold(red(text)),
            warning: (text) => bold(yellow(text)),
            info: (text) => bold(blue(text)),
            hint: (text) => bold(cyan(text)),
        },
        place: bold,
        quiet: dim,
        fix: green,
        added: green,
        removed: red,
    };
}
