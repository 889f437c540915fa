import type { Origin } from '../plan/origin.js';

/** `safe`: surely meant, applied on save; `unsafe`: plausible, changes the service; `show`: an idea, applied only by hand. */
export type Safety = 'safe' | 'unsafe' | 'show';

/** A change in the language of the plan; `editor/fixes.ts` turns it into text. */
export type Intention =
    /** Write other words in place of these: a name, a figure, a date. */
    | { readonly do: 'replace'; readonly at: Origin; readonly words: string }
    /** Write words right after these, on the same line: `warmed to 60 °C` after a vessel. */
    | { readonly do: 'append'; readonly at: Origin; readonly words: string }
    /** Take these words out: a clause with its line, an item with its comma. */
    | { readonly do: 'remove'; readonly at: Origin }
    /** Add a clause as the last line of a block; a thing without a block gets one. */
    | { readonly do: 'add-clause'; readonly to: Origin; readonly clause: string }
    /** Move a block so that it stands right before another. */
    | { readonly do: 'move-before'; readonly block: Origin; readonly before: Origin }
    /** Write a new block before or after another. */
    | { readonly do: 'add-block'; readonly beside: Origin; readonly where: 'before' | 'after'; readonly block: string }
    /** Set a custom in the house's `laying`; the house's block, its `laying` block if any, and the custom's place if it is there. */
    | {
          readonly do: 'set-custom';
          readonly house: Origin;
          readonly laying?: Origin;
          readonly custom?: Origin;
          readonly name: string;
          readonly value: string;
      };

/** What would mend a finding. `editsOf` of the editor's entry point turns it into edits of the text. */
export interface Fix {
    /** Imperative, with the real names: Bring `fish-fork` with the fish course. */
    readonly title: string;
    readonly safety: Safety;
    /** All of them together are the one change. */
    readonly changes: readonly Intention[];
    readonly preferred?: boolean;
}

/** What may be applied without asking: what is surely meant, or also what changes the service. */
export type Widest = 'safe' | 'unsafe';

const ALLOWED: Readonly<Record<Widest, readonly Safety[]>> = { safe: ['safe'], unsafe: ['safe', 'unsafe'] };

/** Of several ways only the preferred one goes without asking. */
export function surestFix(all: readonly Fix[], widest: Widest): Fix | undefined {
    const fixes = all.filter(({ safety }) => ALLOWED[widest].includes(safety));
    return fixes.find(({ preferred }) => preferred) ?? (fixes.length === 1 ? fixes[0] : undefined);
}
