import type { Checked } from '../check.js';
import { HEAT_CAUTION, HEAT_MODELS, REFUSED } from '../output/heat-words.js';
import type { Origin } from '../plan/origin.js';
import { show, type Quantity } from '../plan/quantity.js';
import type { Dish } from '../plan/types.js';
import { listed } from '../rules/wording.js';
import type { Band } from '../service/heat/band.js';
import type { Answer } from '../service/heat/inverse.js';
import type { AtGuest, DishHeat, DrinkHeat, PieceHeat } from '../service/heat/types.js';
import { escaped, sentence } from './markdown.js';

/** Says a temperature in the unit that the line is written in. */
type Say = (celsius: number) => string;

interface About {
    readonly words: string;
    readonly at: Origin;
}

/** What becomes of a temperature that the plan states, on its way to the guest, and why. */
export function aboutTemperature(checked: Checked, file: string, offset: number): About | undefined {
    const { plan, service } = checked;
    const holds = (at: Origin | undefined): boolean => at?.file === file && at.start <= offset && offset <= at.end;
    for (const dish of plan.menu?.courses.flatMap(({ dishes }) => dishes) ?? []) {
        const stated = statedBy(dish).find((each) => holds(each.origin));
        const heat = service.heat.dishes.find((each) => each.course === dish.course && each.dish === dish.index);
        if (stated && heat) {
            return { words: aboutDish(dish, heat, service.heat.air.celsius, sayingAs(stated)), at: stated.origin };
        }
        const use = dish.eaten?.flat().find(({ to }) => to && holds(to.origin));
        const piece = service.heat.pieces.find(
            (each) => each.course === dish.course && each.dish === dish.index && each.piece === use?.piece.name,
        );
        if (use?.to && piece) {
            return { words: aboutPiece(piece, sayingAs(use.to)), at: use.to.origin };
        }
    }
    for (const heat of service.heat.drinks) {
        const stated = heat.pour < 0 ? plan.menu?.coffee?.temperature : service.pours[heat.pour]?.pour.temperature;
        if (stated && holds(stated.origin)) {
            return { words: aboutDrink(heat, sayingAs(stated)), at: stated.origin };
        }
    }
    return undefined;
}

/** The temperatures of a dish on its way, not those that cooking asks for. */
function statedBy({ served, leavesPass, heldAt, measured }: Dish): Quantity[] {
    return [
        served.temperature,
        served.vessel?.to,
        leavesPass?.temperature,
        heldAt?.temperature,
        measured?.temperature,
    ].filter((stated) => stated !== undefined);
}

const sayingAs =
    ({ unit }: Quantity): Say =>
    (celsius) =>
        show(celsius, unit === '°F' ? '°F' : '°C', 0);

/** `65 °C, between 61 and 68`. */
function bandInWords({ low, celsius, high }: Band, say: Say): string {
    const [from, to] = [say(low).replace(/ .*/, ''), say(high).replace(/ .*/, '')];
    if (from === to) {
        return `about ${say(celsius ?? low)}`;
    }
    return celsius === undefined
        ? `between ${from} and ${say(high)}`
        : `about ${say(celsius)}, between ${from} and ${to}`;
}

function aboutDish(dish: Dish, heat: DishHeat, air: number, say: Say): string {
    const { first, last, published, poured, wanted, side, within } = heat;
    const guest = (who: string, at: AtGuest | undefined): string | undefined =>
        at &&
        `${who} guest (${at.journey.table}), ${at.minutes.toFixed(1)} min on the way: ${
            at.temperature ? bandInWords(at.temperature, say) : 'no temperature is computed'
        }`;
    const facts = [
        ...(published
            ? [`at any guest: ${bandInWords(published, say)}`]
            : [guest('first', first), guest('last', last)]),
        wanted === undefined
            ? undefined
            : `wanted: ${say(wanted)}${side === 'frozen' ? '' : side === 'hot' ? ' or hotter' : ' or colder'}`,
        within === undefined ? undefined : `no longer than ${within} min on the way`,
        poured && `just poured: ${bandInWords(poured, say)}`,
        heat.staysFor === undefined ? undefined : `stays as wanted for ${Math.round(heat.staysFor)} min in the room`,
    ];
    const band = last?.temperature ?? published;
    return [
        `**${escaped(dish.title)}** in front of the guest`,
        list(facts),
        sentence(`why: ${whyInWords(heat, air, say)}`),
        `${escaped(HEAT_MODELS[heat.model])}${band ? ` ${sentence(`error: ${band.because}`)}` : ''}`,
        answersInWords(heat, say),
        heat.assumed.length > 0 ? sentence(`assumed: ${listed(heat.assumed)}`) : undefined,
        `*${escaped(HEAT_CAUTION)}*`,
    ]
        .filter((line) => line !== undefined)
        .join('\n\n');
}

const START = { 'leaves-the-pass': 'leaves the pass at', held: 'is held at', reading: 'read at' } as const;

function whyInWords({ start, vessel, last, covered, pouredAtTable }: DishHeat, air: number, say: Say): string {
    return listed([
        start ? `it ${START[start.how]} ${say(start.celsius)}` : 'the plan does not say how warm it leaves the pass',
        ...(vessel ? [`its vessel is at ${say(vessel.celsius)}`] : []),
        ...(vessel?.cooledTo === undefined
            ? []
            : [`at ${say(vessel.cooledTo)} after ${Math.round(last!.journey.outOfWarmer)} min out of its warmer`]),
        ...(pouredAtTable ? ['it is poured at table'] : [covered ? 'it is carried covered' : 'it is carried open']),
        `the room is at ${say(air)}`,
    ]);
}

function answersInWords({ answers }: DishHeat, say: Say): string | undefined {
    if (!answers) {
        return undefined;
    }
    const { vessel, pass, together, covered, hottest, range } = answers;
    const lines = [
        vessel && `the vessel ${answerInWords(vessel, say)}`,
        pass && `from the pass ${answerInWords(pass, say)}`,
        together && `with the vessel at ${say(together.vessel)}, from the pass ${answerInWords(together.pass, say)}`,
        covered === undefined ? undefined : `carried covered it would be ${say(covered)} at the last guest`,
        hottest === undefined ? undefined : `from the pass no hotter than ${say(hottest)}, for the first guest’s mouth`,
        range && `it starts at ${say(range.low)} to ${say(range.high)}`,
    ].filter((line) => line !== undefined);
    return lines.length > 0 ? `To arrive as wanted:\n\n${list(lines)}` : undefined;
}

function answerInWords(answer: Answer, say: Say): string {
    return 'celsius' in answer
        ? `at ${say(answer.celsius)}`
        : `would have to be at ${say(answer.needed)}, which is refused: ${REFUSED[answer.refused]} (${say(answer.limit)})`;
}

function aboutPiece({ piece, from, first, last, touch }: PieceHeat, say: Say): string {
    return [
        `**${escaped(piece.replaceAll('-', ' '))}** in the guest’s hand`,
        list([
            `leaves the warmer or the cold at ${say(from)}`,
            first && `first guest: ${bandInWords(first, say)}`,
            last && `last guest: ${bandInWords(last, say)}`,
            touch === undefined ? undefined : `skin at the first touch: about ${say(touch)}`,
        ]),
        `*${escaped(HEAT_CAUTION)}*`,
    ].join('\n\n');
}

function aboutDrink({ title, wanted, poured, from, coldest, needed, staysFor, assumed }: DrinkHeat, say: Say): string {
    return [
        `**${escaped(title)}** in front of the guest`,
        list([
            `just poured from a ${from.how} at ${say(from.celsius)}: ${bandInWords(poured, say)}`,
            `wanted: ${say(wanted)}`,
            `to have it so, the ${from.how} ${answerInWords(needed, say)}`,
            coldest && `no colder than ${say(coldest.celsius)} from where it is chilled`,
            staysFor === undefined ? undefined : `stays in its range for ${Math.round(staysFor)} min in the glass`,
        ]),
        sentence(`error: ${poured.because}`),
        ...(assumed.length > 0 ? [sentence(`assumed: ${listed(assumed)}`)] : []),
        `*${escaped(HEAT_CAUTION)}*`,
    ].join('\n\n');
}

const list = (lines: readonly (string | undefined)[]): string =>
    lines
        .filter((line) => line !== undefined)
        .map((line) => `- ${escaped(line)}`)
        .join('\n');
