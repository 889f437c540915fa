/** How `check` reports; each has a reporter in `report/`. */
export const reportFormats = ['text', 'json', 'sarif', 'github'] as const;
export type ReportFormat = (typeof reportFormats)[number];

/** How `rules` lists. */
export const ruleListFormats = ['text', 'json'] as const;
export type RuleListFormat = (typeof ruleListFormats)[number];

/** How `what-if` tells what changes. */
export const changeFormats = ['text', 'markdown', 'json'] as const;
export type ChangeFormat = (typeof changeFormats)[number];
