import { InvalidArgumentError, type CommanderError } from 'commander';
import { nearest, readCelsius, readMinutes, SHEET_NAMES, type SheetName } from 'underliner-language';
import { CannotRun } from './cannot-run.js';

/** Reads an option that takes one of a few words. */
export function oneOf<Word extends string>(words: readonly Word[]) {
    return (written: string): Word => {
        const word = words.find((word) => word === written);
        if (word === undefined) {
            throw new InvalidArgumentError(
                `\`${written}\` is none of ${words.join(', ')}.${didYouMean(written, words)}`,
            );
        }
        return word;
    };
}

/** A question with the nearest known word, after a space, or nothing. */
export function didYouMean(written: string, words: Iterable<string>): string {
    const [word] = nearest(written, words);
    return word === undefined ? '' : ` Did you mean \`${word}\`?`;
}

/** Reads the names of sheets: `captain,bar`. */
export function sheetNames(written: string): SheetName[] {
    return written.split(',').map((word) => oneOf(SHEET_NAMES)(word.trim()));
}

/** Reads an option that takes a whole number, 0 or more. */
export function wholeNumber(written: string): number {
    if (!/^\d{1,9}$/.test(written)) {
        throw new InvalidArgumentError(`\`${written}\` is not a whole number.`);
    }
    return Number(written);
}

/** Reads a length of time: `15min`, `15 min`, `1h`. @returns minutes */
export function minutes(written: string): number {
    const read = readMinutes(written);
    if (read === undefined) {
        throw new InvalidArgumentError(`\`${written}\` is not a length of time. Write it as 15min or 1h.`);
    }
    return read;
}

/** Reads a temperature: `26C`, `26 °C`, `79F`. @returns °C */
export function celsius(written: string): number {
    const read = readCelsius(written);
    if (read === undefined) {
        throw new InvalidArgumentError(`\`${written}\` is not a temperature. Write it as 26C or 79F.`);
    }
    return read;
}

/** Reads a time of the clock: `20:10`. @returns minutes since midnight */
export function clock(written: string): number {
    const [, hours, minute] = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(written) ?? [];
    if (hours === undefined) {
        throw new InvalidArgumentError(`\`${written}\` is not a time. Write it as 20:10.`);
    }
    return Number(hours) * 60 + Number(minute);
}

/** What the argument library complains of, in our words. */
export function wrongUsage({ code, message }: CommanderError): CannotRun {
    const [, option = ''] = /'([^']+)'/.exec(message) ?? [];
    const [, suggestion] = /\(Did you mean (?:one of )?([^,?)]+)/.exec(message) ?? [];
    const did = suggestion === undefined ? '' : ` Did you mean \`${suggestion}\`?`;
    switch (code) {
        case 'commander.unknownOption':
            return new CannotRun(`There is no option \`${option}\`.${did}`);
        case 'commander.unknownCommand':
            return new CannotRun(`There is no command \`${option}\`.${did || ' `underliner --help` lists them.'}`);
        case 'commander.invalidArgument':
            return new CannotRun(`\`${option.split(' ')[0]}\`: ${message.replace(/^error: .*? is invalid\. /, '')}`);
        case 'commander.missingArgument':
            return new CannotRun(`Say which ${option.toLowerCase()}.`);
        case 'commander.missingMandatoryOptionValue':
            return new CannotRun(`This command wants the option \`${option}\`.`);
        case 'commander.optionMissingArgument':
            return new CannotRun(`The option \`${option}\` wants a value.`);
        case 'commander.excessArguments':
            return new CannotRun('There are more arguments than this command takes.');
        default:
            return new CannotRun(message.replace(/^error: /, ''));
    }
}
