/** Which allergens everything that is served carries, as the local code wants it told. */
import type { Origin } from '../../plan/origin.js';
import type { Need } from '../../plan/types.js';

export interface AllergenMatrix {
    /** The allergens of which guests must be told here, in the order of the alphabet of their names. */
    readonly columns: readonly AllergenColumn[];
    /** In the order served: bread, then each course with its dishes, what goes on them and its drinks, then coffee. */
    readonly rows: readonly AllergenRow[];
}

export interface AllergenColumn {
    readonly name: string;
    /** In the words of the code. */
    readonly called: string;
}

export interface AllergenRow {
    /** Index of the course; -1 for bread, the number of courses for coffee. */
    readonly course: number;
    readonly sort: 'dish' | 'sauce' | 'garnish' | 'butter' | 'bread' | 'drink' | 'coffee';
    readonly title: string;
    /** The dish that a sauce, garnish, butter or drink goes with. */
    readonly with?: string;
    /** False where the plan makes no statement of contents: then what is not told is not known. */
    readonly isStated: boolean;
    readonly cells: readonly AllergenCell[];
    /** Allergens in it that the code does not require to be told. Guests without them are kept from them all the same. */
    readonly beyond: readonly AllergenName[];
    /** Where nothing is stated: allergens that its kind usually has. No statement, and never a reason to leave one out. */
    readonly usually: readonly AllergenName[];
    readonly leftOffFor: readonly Need[];
    readonly origin: Origin;
}

export interface AllergenName {
    readonly name: string;
    readonly called: string;
}

/** What carries an allergen that must be told. */
export interface AllergenCarrier extends AllergenName {
    /** As guests are told of it: `milk (butter)` where the code has no word of its own for butter. */
    readonly told: string;
}

/** An allergen that must be told, and what in it carries it: `tree nuts`, by `pine nut`. */
export interface AllergenCell {
    readonly column: string;
    readonly by: readonly AllergenCarrier[];
    /** `kind` where only the kind of the dish says so (`kind steak … of beef`). */
    readonly from: 'stated' | 'kind';
}
