/** The four numbers of guests and what each is for, for the compiled plan. */
import { NUMBER_USES, paidFor } from '../service/numbers.js';
import type { Telling } from './plan-menu.js';
import { at, type Json } from './plan-values.js';

export function numbersJson({ plan, service, places }: Telling): Json {
    const { expected, guaranteed, setFor } = plan.event?.guests ?? {};
    const extra = (plan.menu?.courses ?? []).flatMap((course) =>
        course.dishes.flatMap((dish) =>
            dish.extra
                ? [
                      {
                          course: course.title,
                          dish: dish.title,
                          count: dish.extra.count,
                          ...at(places, dish.extra.origin),
                      },
                  ]
                : [],
        ),
    );
    return {
        expected: { count: service.guestCount, ...at(places, expected?.origin) },
        guaranteed: guaranteed && { count: guaranteed.count, ...at(places, guaranteed.origin) },
        setFor: {
            count: service.setFor,
            because: setFor ? 'stated' : 'as many as are expected',
            ...at(places, setFor?.origin),
        },
        extraPortions: extra,
        paidFor: paidFor(plan),
        uses: NUMBER_USES.map(({ figure, in: where, of, beside, because }) => ({
            figure,
            in: where,
            of,
            beside,
            because,
        })),
    };
}
