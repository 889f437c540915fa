/** The fewest people with whom an evening keeps to what the house asks. */
import { remember } from '../remember.js';
import { growable, type Member } from './bottleneck.js';
import { courseTimes } from './course-times.js';
import type { Evening, Team } from './evening.js';
import { simulate } from './simulate.js';
import { speechTimes } from './speech-times.js';
import { fewestServers, missesOf, type Miss, type Targets } from './targets.js';

export interface TeamSought {
    readonly evening: Evening;
    readonly targets: Targets;
    /** Which misses it is to mend. */
    readonly mends: readonly Miss['sort'][];
}

export interface TeamFound {
    readonly team: Team;
    /** Of whom more are needed, and how many then are there. */
    readonly more: readonly { readonly member: Member; readonly role: string; readonly count: number }[];
    /** No smaller team will do: every one was tried. Otherwise it is one that will do. */
    readonly isSmallest: boolean;
}

export interface TeamSearch {
    /** Absent where no team was found that will do. */
    readonly found?: TeamFound;
}

/** How many activities are simulated at most before the search gives up trying every team. */
const MOST_WORK = 120_000;
/** Teams tried beyond it, as multiples of the one there is. */
const MULTIPLES = [1.5, 2, 3, 4];

/**
 * Every team with one person more, then with two, and so on, is simulated until one misses nothing; of teams of one size, the
 * one with the most new servers and the fewest new lines, since a line takes several people. More people are not taken to be
 * better: some schedules get worse with more hands (Graham 1966), so nothing is left out. Where that would take too long, a few
 * multiples of the team are tried instead.
 */
export const smallestTeam = remember(({ evening, targets, mends }: TeamSought): TeamSearch => {
    const guests = evening.tables.reduce((sum, table) => sum + table.guests, 0);
    const members = growable(evening.team);
    const least = { ...evening.team, servers: Math.max(evening.team.servers, fewestServers(guests, targets)) };
    let work = 0;
    const will = (team: Team): boolean => {
        const simulated = simulate({ ...evening, team });
        work += simulated.service.network.activities.length;
        const misses = missesOf(evening, courseTimes(simulated), speechTimes(simulated), targets);
        return !misses.some((miss) => mends.includes(miss.sort));
    };
    const answer = (team: Team, isSmallest: boolean): TeamSearch => ({
        found: {
            team,
            more: members
                .filter(({ member }) => team[member] > evening.team[member])
                .map(({ member, role }) => ({ member, role, count: team[member] })),
            isSmallest,
        },
    });
    for (let more = 0; work < MOST_WORK; more++) {
        for (const team of teamsOf(least, members, more)) {
            if (will(team)) {
                return answer(team, true);
            }
            if (work >= MOST_WORK) {
                break;
            }
        }
    }
    for (const factor of MULTIPLES) {
        const grown = members.map(({ member }) => [member, Math.ceil(least[member] * factor)]);
        const team = { ...least, ...(Object.fromEntries(grown) as Partial<Team>) };
        if (will(team)) {
            return answer(team, false);
        }
    }
    return {};
});

/** Every team with so many more, most servers first, most lines last. */
function* teamsOf(team: Team, members: readonly { readonly member: Member }[], more: number): Generator<Team> {
    const [first, ...others] = members;
    if (!first) {
        if (more === 0) {
            yield team;
        }
        return;
    }
    for (let count = more; count >= 0; count--) {
        yield* teamsOf({ ...team, [first.member]: team[first.member] + count }, others, more - count);
    }
}
