import { degreesOf, rangeOf } from '../../plan/degrees.js';
import type { Finding } from '../../rules/rule.js';
import type { CourseRun } from '../../service/run/types.js';
import { capital, courseTitle, faces, type SheetSource } from './evening.js';

/** What may go wrong, gravest first, with the figures that say how near it is. */
export function risksOf(source: SheetSource): string[] {
    const { findings } = source;
    const found = (wanted: Finding['severity']): string[] =>
        findings.filter(({ severity }) => severity === wanted).map(({ message }) => message.replaceAll('`', ''));
    return [
        ...found('error'),
        ...warmth(source),
        ...found('warning'),
        ...(findings.some(({ rule }) => rule === 'drinks-past-the-limit') ? [] : alcohol(source)),
        ...pace(source),
    ];
}

/** Dishes that may reach a guest other than they are wanted. */
function warmth({ plan, service }: SheetSource): string[] {
    return service.heat.dishes.flatMap((heat) => {
        const { wanted, last, first, published } = heat;
        const title = plan.menu?.courses[heat.course]?.dishes.find(({ index }) => index === heat.dish)?.title;
        if (wanted === undefined || heat.side !== 'hot' || !title) {
            return [];
        }
        if (published) {
            return published.low < wanted
                ? [
                      `${title}: wanted at ${degreesOf(plan, wanted)}; plates arrive at ${rangeOf(plan, published.low, published.high)}.`,
                  ]
                : [];
        }
        const temperature = last?.temperature;
        return temperature?.celsius === undefined || temperature.low >= wanted
            ? []
            : [
                  `${title}: wanted at ${degreesOf(plan, wanted)}; last guest (${last!.journey.table}) about ${degreesOf(plan, temperature.celsius)}, ` +
                      rangeOf(plan, temperature.low, temperature.high) +
                      (first?.temperature?.celsius === undefined
                          ? '.'
                          : `; first guest ${degreesOf(plan, first.temperature.celsius)}, hot.`),
              ];
    });
}

function pace({ plan, service }: SheetSource): string[] {
    const { run, preparations } = service;
    const face = faces(plan);
    const slowest = slowestTable(run?.courses ?? []);
    const chance = preparations?.setUp.chance.inTime;
    const most = run?.bottleneck?.oneMore.toSorted((a, b) => b.sooner - a.sooner)[0];
    return [
        ...(slowest
            ? [
                  `Longest wait: ${slowest.table} gets ${courseTitle(plan, slowest.course)} ${Math.round(slowest.minutes)} min after the first table, at ${face(slowest.at)}.`,
              ]
            : []),
        ...(run?.bottleneck
            ? [
                  `${capital(run.bottleneck.role)}s hold the evening up most` +
                      (most && most.sooner >= 1
                          ? `; one more ${most.role} ends it ${Math.round(most.sooner)} min sooner.`
                          : '.'),
              ]
            : []),
        ...(chance !== undefined && chance < 0.95
            ? [`Set-up is done in time in ${Math.round(chance * 100)} of 100 such days.`]
            : []),
    ];
}

function slowestTable(
    courses: readonly CourseRun[],
): { course: number; table: string; minutes: number; at: number } | undefined {
    return courses
        .filter(({ tables }) => tables.length > 1)
        .map((course) => {
            const last = course.tables.reduce((a, b) => (b.served.last > a.served.last ? b : a));
            return {
                course: course.course,
                table: last.table,
                minutes: last.served.last - course.served.first,
                at: last.served.last,
            };
        })
        .toSorted((a, b) => b.minutes - a.minutes)[0];
}

function alcohol({ plan, service }: SheetSource): string[] {
    const most = Math.max(0, ...service.alcohol.map(({ drinks }) => drinks ?? 0));
    return most > 0
        ? [
              `A guest who takes every pour has ${most.toFixed(1)} standard drinks (${plan.code.called ?? plan.code.name}). Licensed staff decide who is served.`,
          ]
        : [];
}
