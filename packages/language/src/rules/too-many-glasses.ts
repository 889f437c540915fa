import type { CoverGlass } from '../service/types.js';
import { isWine } from './drinks.js';
import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { counted, quoted } from './wording.js';

export default defineRule({
    id: 'too-many-glasses',
    group: 'drinks',
    since: '0.1.0',
    title: 'More glasses at a cover than the house lays',
    why: 'Past a handful, glasses crowd the next cover, are knocked over in serving, and leave guests unsure which to lift.',
    source: ['table-service 4.7', 'table-service 4.9', 'table-service 4.10'],
    fix: 'always',
    customs: ['most-wine-glasses', 'most-glasses'],
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `house "Saltmarsh Hall" { laying { most-wine-glasses: 1 } }
event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course appetizer "Smoked beet and curd" {
        served on salad-plate at 8 °C
        lasts 20 min
        contains milk, mustard
        pour "Dry riesling" 4 fl oz into white-wine-glass at 9 °C is light-white-wine {
            contains sulphites
            instead "Verjus and soda" 4 fl oz into white-wine-glass { contains nothing }
        }
    }
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        pour <|"Country red"|> 5 fl oz into red-wine-glass at 17 °C is red-wine {
            contains sulphites
            instead "Elderberry press" 5 fl oz into red-wine-glass { contains nothing }
        }
    }
}`,
            },
        ],
        right: [
            {
                text: `house "Saltmarsh Hall" { laying { most-wine-glasses: 2 } }
event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course appetizer "Smoked beet and curd" {
        served on salad-plate at 8 °C
        lasts 20 min
        contains milk, mustard
        pour "Dry riesling" 4 fl oz into white-wine-glass at 9 °C is light-white-wine {
            contains sulphites
            instead "Verjus and soda" 4 fl oz into white-wine-glass { contains nothing }
        }
    }
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        pour "Country red" 5 fl oz into red-wine-glass at 17 °C is red-wine {
            contains sulphites
            instead "Elderberry press" 5 fl oz into red-wine-glass { contains nothing }
        }
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const kinds = new Map(service.pours.map(({ pour, kind }) => [pour, kind]));
        const isForWine = ({ pour }: CoverGlass): boolean => pour !== undefined && isWine(kinds.get(pour));
        const { 'most-wine-glasses': mostWine, 'most-glasses': most } = plan.customs;
        const isNew = firstSight();
        for (const { cover } of service.variations) {
            const counts = [
                {
                    custom: 'most-wine-glasses',
                    limit: mostWine.value,
                    glasses: cover.glasses.filter(isForWine),
                    noun: 'wine glass',
                },
                { custom: 'most-glasses', limit: most.value, glasses: cover.glasses, noun: 'glass' },
            ];
            // Too many wines are too many glasses as well: one mistake, told once.
            const over = counts.find(({ limit, glasses }) => typeof limit === 'number' && glasses.length > limit);
            const pour = over?.glasses.slice(Number(over.limit)).find((glass) => glass.pour)?.pour;
            if (!over || !pour || !isNew(pour.titleOrigin)) {
                continue;
            }
            const stand = over.glasses.length === 1 ? 'stands' : 'stand';
            report({
                at: pour.titleOrigin,
                message: `${counted(over.glasses.length, over.noun, `${over.noun}es`)} ${stand} at one cover with ${quoted(pour.title)}; this house lays ${over.limit} at most (${quoted(over.custom)}).`,
                hint: 'Bring the glass with its course, or pour one drink through two courses.',
                fixes: [
                    {
                        title: `Bring the glass of ${quoted(pour.title)} with its course`,
                        safety: 'unsafe',
                        changes: [{ do: 'append', at: pour.head, words: ', brought with the course' }],
                    },
                ],
                related: over.glasses
                    .filter((glass) => glass.pour && glass.pour !== pour)
                    .map((glass) => ({
                        at: glass.pour!.titleOrigin,
                        message: `${quoted(glass.pour!.title)} has a glass of its own.`,
                    })),
            });
        }
    },
});
