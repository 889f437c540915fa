import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { growable } from './bottleneck.js';
import { courseTimes } from './course-times.js';
import type { Evening, Team } from './evening.js';
import { evening as usual, evenings } from '../../../../../tests/support/simulated-evenings.js';
import { simulate } from './simulate.js';
import { smallestTeam, type TeamSought } from './smallest-team.js';
import { speechTimes } from './speech-times.js';
import { missesOf, type Targets } from './targets.js';

const targets: Targets = { tableWait: 6, seatWait: 1.5, wineWait: 2, window: 5, guestsPerServer: 20 };
const mends = ['table-wait', 'seat-wait', 'wine-wait', 'toast-wait'] as const;

function keeps(evening: Evening, team: Team, asked: Targets): boolean {
    const guests = evening.tables.reduce((sum, table) => sum + table.guests, 0);
    const simulated = simulate({ ...evening, team });
    const misses = missesOf(evening, courseTimes(simulated), speechTimes(simulated), asked);
    return team.servers * asked.guestsPerServer >= guests && misses.every(({ sort }) => sort === 'late');
}

/** Every team with at most `most` people more, in no order that could help. */
function everyTeam(team: Team, most: number): Team[] {
    const members = growable(team).map(({ member }) => member);
    return members.reduce<Team[]>(
        (teams, member) =>
            teams.flatMap((each) =>
                Array.from({ length: most + 1 }, (_, more) => ({ ...each, [member]: each[member] + more })),
            ),
        [team],
    );
}

const sizeOf = (team: Team): number => growable(team).reduce((sum, { member }) => sum + team[member], 0);

describe('the smallest team', () => {
    it('is the smallest of all that keep to what the house asks, each of them tried', () => {
        const asked = fc.record({
            tableWait: fc.integer({ min: 3, max: 12 }),
            seatWait: fc.constantFrom(1.5, 3),
            wineWait: fc.constant(3),
            window: fc.constant(5),
            guestsPerServer: fc.constantFrom(10, 20, 40),
        });
        let found = 0;
        fc.assert(
            fc.property(evenings, asked, (evening, wanted) => {
                const sought: TeamSought = { evening, targets: wanted, mends };
                const answer = smallestTeam(sought).found;
                const most = 2;
                const good = everyTeam(evening.team, most).filter((team) => keeps(evening, team, wanted));
                const least = Math.min(...good.map(sizeOf)) - sizeOf(evening.team);
                if (answer?.isSmallest) {
                    const more = sizeOf(answer.team) - sizeOf(evening.team);
                    expect(keeps(evening, answer.team, wanted)).toBe(true);
                    // Every team with up to so many more has been tried here as well.
                    expect(Math.min(least, most + 1)).toBe(Math.min(more, most + 1));
                    found += more > 0 && more <= most ? 1 : 0;
                } else {
                    expect(least).toBeGreaterThan(most);
                }
            }),
            { numRuns: 40, seed: 5 },
        );
        expect(found, 'evenings in which more people were wanted and few were enough').toBeGreaterThan(10);
    });
    it('is the team there is where nobody waits', () => {
        const evening = usual();
        expect(smallestTeam({ evening, targets, mends }).found).toEqual({
            team: evening.team,
            more: [],
            isSmallest: true,
        });
    });
    it('names whom it takes: another runner, another line', () => {
        const evening = usual();
        const withTeam = (team: Partial<Team>) =>
            smallestTeam({ evening: { ...evening, team: { ...evening.team, ...team } }, targets, mends }).found?.more;
        expect(withTeam({ lines: 1, stations: [0.2] })).toEqual([{ member: 'lines', role: 'plating line', count: 2 }]);
        expect(withTeam({ servers: 1 })?.map(({ member }) => member)).toContain('servers');
    });
    it('finds none where people are of no use', () => {
        const evening = usual();
        const slow = { ...evening, pace: { ...evening.pace, settingDown: 5 } };
        expect(smallestTeam({ evening: slow, targets: { ...targets, seatWait: 0.01 }, mends }).found).toBeUndefined();
    });
});
