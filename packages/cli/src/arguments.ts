import { InvalidArgumentError, type CommanderError } from 'commander';
import { nearest } from 'underliner-language';
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

/** Reads an option that takes a whole number, 0 or more. */
export function wholeNumber(written: string): number {
    if (!/^\d{1,9}$/.test(written)) {
        throw new InvalidArgumentError(`\`${written}\` is not a whole number.`);
    }
    return Number(written);
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
