import type { Files } from './files.js';
import type { Plan } from './plan/types.js';
import type { Finding } from './rules/rule.js';
import type { Service } from './service/types.js';

export interface Checked {
    readonly file: string;
    readonly plan: Plan;
    readonly service: Service;
    /** Ordered by file, position, rule. */
    readonly findings: readonly Finding[];
    /** The text of every file read, by path, for excerpts and fixes. */
    readonly texts: ReadonlyMap<string, string>;
}

export function check(_file: string, _files: Files): Checked {
    throw new Error('written next');
}
