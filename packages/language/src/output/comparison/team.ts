import { listed } from '../../rules/wording.js';
import type { Team } from '../../plan/types.js';
import { paired, type Change, type Compared } from './change.js';
import { changedThings, type Facts, type Thing } from './facts.js';
import { saidList } from './said.js';

/** People by role and what they do in an hour, who serves which tables, and who is busiest. */
export function changedTeam(before: Compared, after: Compared): Change[] {
    const is = after.service.run?.bottleneck?.role;
    return [
        ...changedCounts(before, after),
        ...changedThings('team', ROLE, rolesOf(before), rolesOf(after), () => undefined, ''),
        ...changedStations(before, after),
        ...(before.service.run?.bottleneck?.role === is || is === undefined
            ? []
            : [{ subject: 'team', key: 'bottleneck', text: `what holds the evening up now is the ${is}` } as const]),
    ];
}

type Role = Team['roles'][number];

const called = (role: string): string => role.replaceAll('-', ' ');

const rolesOf = ({ plan }: Compared): Thing<Role>[] =>
    (plan.team?.roles ?? []).map((role) => ({ key: role.role.name, called: called(role.role.name), of: role }));

const ROLE: Facts<Role> = {
    'each at': ({ rate }) => rate && { text: rate.written, means: `${rate.amount / rate.perMinutes} ${rate.what}` },
    'with stations of': ({ stations }) => saidList(stations, ', '),
};

function changedCounts(before: Compared, after: Compared): Change[] {
    return paired(rolesOf(before), rolesOf(after), ({ key }) => key).flatMap(({ key, was, is }): Change[] => {
        const [old, now] = [was?.of.count.count ?? 0, is?.of.count.count ?? 0];
        return old === now
            ? []
            : [
                  {
                      subject: 'team',
                      key,
                      before: old,
                      after: now,
                      unit: 'people',
                      text: `${called(key)}: ${now} instead of ${old}`,
                  },
              ];
    });
}

/** One line of all stations, for where one server has another table, so has the next. */
function changedStations(before: Compared, after: Compared): Change[] {
    const stations = ({ service }: Compared): string => {
        const tables = new Map<number, string[]>();
        for (const { server, name } of service.run?.tables ?? []) {
            tables.set(server, [...(tables.get(server) ?? []), name]);
        }
        return [...tables]
            .toSorted(([a], [b]) => a - b)
            .map(([server, names]) => `${service.run!.people[server]?.name ?? 'nobody'} has ${listed(names)}`)
            .join('; ');
    };
    const [was, is] = [stations(before), stations(after)];
    return was === is || was === '' || is === '' ? [] : [{ subject: 'team', key: 'stations', text: `stations: ${is}` }];
}
