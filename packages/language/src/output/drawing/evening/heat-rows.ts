import { degreesIn, rangeLike, scaleOf, scaleOfMenu, type Scale } from '../../../plan/degrees.js';
import type { Band } from '../../../service/heat/band.js';
import type { DishHeat } from '../../../service/heat/types.js';
import type { Run, Span } from '../../../service/run/types.js';
import type { Origin } from '../../../plan/origin.js';
import type { Quantity } from '../../../plan/quantity.js';
import { bandLike, degreesBeyond, misses } from '../../../rules/at-the-guest.js';
import type { Drawable } from '../pictures.js';

/** One hot, cold or frozen dish in front of its first and its last guest. */
export interface HeatRow {
    readonly title: string;
    readonly course: number;
    readonly origin: Origin;
    /** When its first and its last plate are set down, min after guests are seated. */
    readonly served: Span;
    /** Absent where nothing tells how warm it is there. */
    readonly bands?: { readonly first: Band; readonly last: Band };
    /** As warm (or cold) as it is wanted, °C. */
    readonly limit?: number;
    /** In which it is told. */
    readonly scale: Scale;
    /** What the picture shows, in words, line by line. */
    readonly says: readonly string[];
    /** How it is judged, in words; absent where nothing is to be judged. */
    readonly verdict?: string;
}

/** The dishes of the heat section in the menu's order. */
export function heatRows({ plan, service }: Drawable, run: Run): HeatRow[] {
    return service.heat.dishes.flatMap((heat): HeatRow[] => {
        const course = plan.menu!.courses[heat.course]!;
        const dish = course.dishes.find(({ index }) => index === heat.dish)!;
        const plates = run.courses
            .find((each) => each.course === heat.course)
            ?.dishes.find((each) => each.dish === heat.dish);
        if (!plates) {
            return [];
        }
        const served = { first: plates.first.served, last: plates.last.served };
        const wanted = dish.served.temperature;
        const scale = wanted ? scaleOf(wanted) : scaleOfMenu(plan);
        const about = { title: dish.title, course: heat.course, origin: dish.head, served, limit: heat.wanted, scale };
        return [{ ...about, ...bandsOf(heat, wanted, scale) }];
    });
}

function bandsOf(
    heat: DishHeat,
    wanted: Quantity | undefined,
    scale: Scale,
): Pick<HeatRow, 'bands' | 'says' | 'verdict'> {
    const first = heat.first?.temperature ?? heat.published;
    const last = heat.last?.temperature ?? heat.published;
    if (!first || !last) {
        const isByTime = heat.model === 'time-limit' || heat.side === 'frozen';
        return { says: isByTime ? inTime(heat, scale) : [UNKNOWN, ...(wanted ? wouldDo(heat, wanted) : [])] };
    }
    const inWords = (band: Band): string => (wanted ? bandLike(wanted, band) : inWhole(band, scale));
    const said = heat.published
        ? [`every guest ${inWords(heat.published)}`]
        : [`first guest ${inWords(first)}`, `last guest ${inWords(last)}`];
    const side = heat.side === 'hot' ? 'hot' : 'cold';
    if (!wanted) {
        return { bands: { first, last }, says: said };
    }
    const wantedAs = `wanted ${wanted.written} or ${side === 'hot' ? 'hotter' : 'colder'}`;
    const verdict = judge(side, wanted, [first, last]);
    return { bands: { first, last }, says: said, verdict: `${wantedAs}: ${verdict}` };
}

const UNKNOWN = 'not known: the plan does not say how warm it leaves the pass';

/** What at the pass would make it as wanted: `66 to 74 °C would do`. */
function wouldDo({ answers, side }: DishHeat, wanted: Quantity): string[] {
    const { range, pass } = answers ?? {};
    if (range) {
        return [`wanted ${wanted.written}: ${rangeLike(wanted, range.low, range.high)} at the pass would do`];
    }
    if (!pass || side === 'frozen') {
        return [];
    }
    if ('celsius' in pass) {
        const words = `${degreesBeyond(wanted, pass.celsius, side)} or ${side === 'hot' ? 'hotter' : 'colder'}`;
        return [`wanted ${wanted.written}: ${words} at the pass would do`];
    }
    // Kept as the local code has it, it comes as wanted or better.
    return pass.refused === 'holding' ? [] : [`wanted ${wanted.written}: nothing safe at the pass would do`];
}

function inTime({ last, within, wanted }: DishHeat, scale: Scale): string[] {
    const way = last ? `${last.minutes.toFixed(1)} min to the last guest` : undefined;
    return [
        [
            ...(way ? [way] : []),
            ...(within === undefined ? [] : [`${within} min allowed`]),
            ...(wanted === undefined ? [] : [`wanted at ${degreesIn(scale, wanted)}`]),
        ].join(', '),
    ];
}

/** `71 °C (69 to 74 °C)`. */
function inWhole({ low, celsius, high }: Band, scale: Scale): string {
    const range = `${Number.parseInt(degreesIn(scale, low), 10)} to ${degreesIn(scale, high)}`;
    return celsius === undefined ? range : `${degreesIn(scale, celsius)} (${range})`;
}

/** As `check` judges: in the whole degrees that are told, in the scale in which it is wanted. */
function judge(side: 'hot' | 'cold', wanted: Quantity, bands: readonly Band[]): string {
    const [cooler, worst, likely] =
        side === 'hot'
            ? (['too cool', ({ low }: Band) => low, ({ celsius, high }: Band) => celsius ?? high] as const)
            : (['too warm', ({ high }: Band) => high, ({ celsius, low }: Band) => celsius ?? low] as const);
    return bands.some((band) => misses(wanted, likely(band), side))
        ? `${cooler} at a guest`
        : bands.some((band) => misses(wanted, worst(band), side))
          ? `may be ${cooler}`
          : 'as wanted';
}
