import { paired, type Change, type Compared } from './change.js';

/** People by role, and who is busiest. */
export function changedTeam(before: Compared, after: Compared): Change[] {
    const roles = ({ plan }: Compared) =>
        (plan.team?.roles ?? []).map(({ role, count }) => ({ name: role.name, count: count.count }));
    const people = paired(roles(before), roles(after), ({ name }) => name).flatMap(({ key, was, is }): Change[] => {
        const [old, now] = [was?.count ?? 0, is?.count ?? 0];
        return old === now
            ? []
            : [
                  {
                      subject: 'team',
                      key,
                      before: old,
                      after: now,
                      unit: 'people',
                      text: `${key.replaceAll('-', ' ')}: ${now} instead of ${old}`,
                  },
              ];
    });
    const was = before.service.run?.bottleneck?.role;
    const is = after.service.run?.bottleneck?.role;
    return was === is || is === undefined
        ? people
        : [...people, { subject: 'team', key: 'bottleneck', text: `what holds the evening up now is the ${is}` }];
}
