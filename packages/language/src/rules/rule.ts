import type { CustomName } from '../plan/customs.js';
import type { Origin } from '../plan/origin.js';
import type { Plan, Severity, Waiver } from '../plan/types.js';
import type { Service } from '../service/types.js';
import type { Fix } from './fixes.js';

/** Sets the default severity: safety is an error, service and cover are warnings, text is an error, trade is an information. */
export type RuleGroup = 'safety' | 'service' | 'cover' | 'drinks' | 'guests' | 'trade' | 'text';

/** How grave a rule's findings are where neither the rule nor the house says otherwise. */
export const GROUP_SEVERITY: Record<RuleGroup, Severity> = {
    safety: 'error',
    text: 'error',
    guests: 'error',
    service: 'warning',
    cover: 'warning',
    drinks: 'warning',
    trade: 'info',
};

/** Another place that a finding speaks of. */
export interface Related {
    readonly at: Origin;
    readonly message: string;
}

/** What a rule reports: where, what is wrong with the figures, what to do. */
export interface Report {
    readonly at: Origin;
    /** One sentence with the user's own names in back-quotes, the limit and the value. */
    readonly message: string;
    /** What to do, one sentence. */
    readonly hint?: string;
    readonly related?: readonly Related[];
    /**
     * Best first; each works alone. As a function where they have to be tried out: it is called when somebody wants them, and
     * none of them is `safe`.
     */
    readonly fixes?: readonly Fix[] | (() => readonly Fix[]);
    /** Only where it differs from the rule's own, such as 20 inch an error and 23 a warning. */
    readonly severity?: Severity;
}

export interface RuleInput {
    readonly plan: Plan;
    readonly service: Service;
    /** Every rule there is, by id: for the rules that judge waivers and settings. */
    readonly rules?: ReadonlyMap<string, Rule>;
    /** Waivers that silenced nothing; the rule that reads it runs after all others. */
    readonly unusedWaivers?: readonly Waiver[];
    readonly report: (report: Report) => void;
}

export interface RuleExample {
    /** What the example shows, in a few words. */
    readonly title?: string;
    /**
     * A whole `.cover` text, or several files each headed by `//- name.cover` (the last is the one checked).
     * In a wrong example `<|…|>` marks the words the finding must cover.
     */
    readonly text: string;
}

/** One rule, whole: what it finds, why, and by which source. */
export interface Rule {
    /** Kebab-case, for ever: it stands in waivers and settings. */
    readonly id: string;
    readonly group: RuleGroup;
    /** Only where it differs from its group's. */
    readonly severity?: Severity;
    readonly since: string;
    /** What is wrong, in a few words. */
    readonly title: string;
    /** Why the trade cares: two sentences at most. */
    readonly why: string;
    /** Ids of published facts (`table-service 1.1`), or `common practice, no source`. */
    readonly source: readonly string[];
    /** Whether a finding comes with a fix. `never` must say why in `noFix`. */
    readonly fix: 'never' | 'sometimes' | 'always';
    readonly noFix?: string;
    /** Customs it reads; figures live there. */
    readonly customs?: readonly CustomName[];
    /** `fixed`: may be neither waived nor off; `floor`: drops at most to warning; absent: free. */
    readonly safety?: 'fixed' | 'floor';
    /** `file`: holds for a file alone, without an event; `event`: needs the whole plan. */
    readonly scope: 'file' | 'event';
    readonly examples: { readonly wrong: readonly RuleExample[]; readonly right: readonly RuleExample[] };
    readonly check: (input: RuleInput) => void;
}

export function defineRule(rule: Rule): Rule {
    return rule;
}

/** A finding as everything outside sees it. */
export interface Finding {
    /** The id of the rule. */
    readonly rule: string;
    /** After the house's settings and the plan's waivers. */
    readonly severity: Severity;
    readonly at: Origin;
    /** What is wrong, in one sentence. */
    readonly message: string;
    /** What to do. */
    readonly hint?: string;
    readonly related: readonly Related[];
    /** Best first; each works alone. Some are worked out when they are first asked for. */
    readonly fixes: readonly Fix[];
    /** Whether one of the fixes is `safe`: told without working any out. */
    readonly hasSafeFix: boolean;
}
