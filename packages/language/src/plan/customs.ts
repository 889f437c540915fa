import type { CustomSpec } from './customs/custom-spec.js';
import { courseCustoms } from './customs/courses.js';
import { distanceCustoms } from './customs/distances.js';
import { drinkCustoms } from './customs/drinks.js';
import { glassCustoms } from './customs/glasses.js';
import { paceCustoms } from './customs/pace.js';
import { pieceCustoms } from './customs/pieces.js';
import { placeCustoms } from './customs/place.js';
import { roomCustoms } from './customs/room.js';
import { serviceCustoms } from './customs/service.js';
import { setupCustoms } from './customs/setup.js';
import { stockCustoms } from './customs/stock.js';
import { supplyCustoms } from './customs/supplies.js';
import { teamCustoms } from './customs/team.js';
import { temperatureCustoms } from './customs/temperatures.js';

export type { CustomChoice, CustomFigure, CustomSource, CustomSpec } from './customs/custom-spec.js';
export { guestsPerServer } from './customs/team.js';

// Published authorities disagree, so a check compares with what the house declares and never with one absolute.
// The page docs/customs.md is generated from this data.

/** The customs by subject, in the order in which the page shows them. */
export const customGroups = [
    { title: 'Pieces', customs: pieceCustoms },
    { title: 'Distances', customs: distanceCustoms },
    { title: 'The place', customs: placeCustoms },
    { title: 'Glasses', customs: glassCustoms },
    { title: 'Room and tables', customs: roomCustoms },
    { title: 'Drinks', customs: drinkCustoms },
    { title: 'Service', customs: serviceCustoms },
    { title: 'Order of courses', customs: courseCustoms },
    { title: 'Team', customs: teamCustoms },
    { title: 'Pace of the service', customs: paceCustoms },
    { title: 'Setting up and striking', customs: setupCustoms },
    { title: 'Temperatures', customs: temperatureCustoms },
    { title: 'Stock', customs: stockCustoms },
    { title: 'Supplies', customs: supplyCustoms },
] as const;

type EveryCustom = (typeof customGroups)[number]['customs'][number];

export type CustomName = EveryCustom['name'];

type NamedCustom = CustomSpec & { readonly name: CustomName };

/** Every custom that a house can declare. */
export const customSpecs: readonly NamedCustom[] = customGroups.flatMap(
    (group): readonly NamedCustom[] => group.customs,
);

/** What a declared custom may hold: one of its words, or a figure in the computing unit of its dimension. */
export type CustomValueOf<Name extends CustomName> =
    Extract<EveryCustom, { name: Name }> extends infer Spec
        ? | (Spec extends { choices: readonly { value: infer Value }[] } ? Value : never)
          | (Spec extends { figure: object } ? number : never)
        : never;
