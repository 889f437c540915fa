import type { DishHeat } from '../../service/heat/types.js';
import { paired, type Change, type Compared } from './change.js';

/** How warm each dish is before its last guest, to the degree. */
export function changedTemperatures(before: Compared, after: Compared): Change[] {
    return paired(arrivals(before), arrivals(after), ({ key }) => key).flatMap(({ key, was, is }): Change[] => {
        if (!was || !is || was.celsius === is.celsius) {
            return [];
        }
        return [
            {
                subject: 'temperatures',
                key,
                before: was.celsius,
                after: is.celsius,
                unit: 'celsius',
                text: `\`${key}\` reaches the last guest at ${is.celsius} °C instead of ${was.celsius} °C`,
            },
        ];
    });
}

function arrivals({ plan, service }: Compared): { readonly key: string; readonly celsius: number }[] {
    return service.heat.dishes.flatMap((heat: DishHeat) => {
        const title = plan.menu?.courses[heat.course]?.dishes[heat.dish]?.title;
        const celsius = heat.last?.temperature?.celsius;
        return title === undefined || celsius === undefined ? [] : [{ key: title, celsius: Math.round(celsius) }];
    });
}
