import type { Plan } from '../../plan/types.js';

/** The papers that sheets are made for: ISO 216 A4, and the Letter of North America (ANSI/ASME Y14.1). */
export const PAPERS = ['a4', 'letter'] as const;

/** A paper that sheets are made for. */
export type Paper = (typeof PAPERS)[number];

/** Where printers hold Letter. */
const LETTER_CODES: readonly string[] = ['us-model', 'new-york-city', 'canada'];

/** The paper that lies in the printers where the plan's local code is in force. */
export const paperOf = ({ code }: Pick<Plan, 'code'>): Paper => (LETTER_CODES.includes(code.name) ? 'letter' : 'a4');
