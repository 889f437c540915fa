import type { Plan } from '../../plan/types.js';
import { listed } from '../../rules/wording.js';
import { planJson } from '../plan-json.js';
import type { Change, Compared } from './change.js';

/**
 * The net beneath all subjects, for where none of them tells anything: whatever the texts or the compiled plans say otherwise is
 * named, so that nobody is told that nothing changes. What only says where or how something is written is no difference.
 */
export function changedElsewhere(before: Compared, after: Compared): Change[] {
    const sections = [
        ...different(sectionsOf(before), sectionsOf(after)),
        ...different(textsOf(before.plan), textsOf(after.plan)),
    ];
    return sections.length === 0
        ? []
        : [
              {
                  subject: 'plan',
                  key: 'elsewhere',
                  text: `the plans differ elsewhere: ${listed([...new Set(sections)])}`,
              },
          ];
}

type Sections = Readonly<Record<string, unknown>>;

function different(before: Sections, after: Sections): string[] {
    return [...new Set([...Object.keys(after), ...Object.keys(before)])].filter(
        (name) => plainText(before[name]) !== plainText(after[name]),
    );
}

/** Of the compiled plan, what is computed section by section. */
function sectionsOf({ plan, service, texts }: Compared): Sections {
    const { files: _, service: computed, ...stated } = planJson({ file: '', plan, service, texts, findings: [] });
    return { ...stated, ...(computed as Sections) };
}

/** Of the texts, what they declare, in whichever file. */
function textsOf({ readings }: Plan): Sections {
    return {
        'the guest list': readings.flatMap(({ guests }) => guests),
        'pieces of the cupboard': readings.flatMap(({ pieces }) => pieces),
        'kinds of the cupboard': readings.flatMap(({ kinds }) => kinds),
        'allergens of the cupboard': readings.flatMap(({ substances }) => substances),
        'diets of the cupboard': readings.flatMap(({ diets }) => diets),
        'codes of the cupboard': readings.flatMap(({ codes }) => codes),
    };
}

const PLACES = new Set(['at', 'file', 'start', 'end', 'written', 'unit']);

/** Without the places in a text and the units that a figure is written in. */
function plainText(value: unknown): string | undefined {
    return JSON.stringify(value, (key, part: unknown) => {
        if (PLACES.has(key) && typeof part !== 'object') {
            return undefined;
        }
        // A figure written in another unit is the same but for its last digits.
        return typeof part === 'number' ? Number(part.toPrecision(9)) : part;
    });
}
