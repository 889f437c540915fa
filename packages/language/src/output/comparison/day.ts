import { eveningClock } from '../../service/clock/evening.js';
import { clockFace } from '../../service/clock/local-time.js';
import type { ClockTime, Event, Plan } from '../../plan/types.js';
import { quoted } from '../../rules/wording.js';
import type { Change, Compared } from './change.js';
import { changedThings, type Facts, type Thing } from './facts.js';
import { said, type Said } from './said.js';

/** The day, its hours, the crew's meal, and by whose code it is judged. */
export function changedDay(before: Compared, after: Compared): Change[] {
    const { [SEATED]: _, ...others } = DAY;
    // Where both say when, the times tell by how much.
    const isTimed = [before, after].every(({ plan }) => eveningClock(plan));
    return changedThings('day', isTimed ? others : DAY, theEvent(before.plan), theEvent(after.plan));
}

/** The event with its plan: an hour means something on its evening only. */
type Day = Event & { readonly plan: Plan };

function theEvent(plan: Plan): Thing<Day>[] {
    return plan.event ? [{ key: 'event', called: '', of: { ...plan.event, plan } }] : [];
}

const SEATED = 'guests are seated at';

const DAY: Facts<Day> = {
    'day:': ({ date }) => said(date?.iso ?? date?.written),
    'time zone': ({ zone }) => said(zone?.text),
    'doors at': ({ doors }) => saidTime(doors),
    [SEATED]: ({ seated }) => saidTime(seated),
    'the event ends at': ({ ends }) => saidTime(ends),
    'crew of': ({ crew }) => said(crew?.count),
    'the crew eats': ({ crew }) => said(crew?.dish && quoted(crew.dish.text)),
    'the crew eats at': ({ crew }) => saidTime(crew?.at),
    'the event is called': ({ title }) => said(quoted(title)),
    'notice to guests:': ({ notice }) => said(notice && quoted(notice.text)),
    'code in force:': ({ plan }) => said(plan.code.name),
};

/** As the clocks on the wall show it. */
export function saidTime(time: ClockTime | undefined): Said | undefined {
    return said(time && (time.minutes === undefined ? time.written : clockFace(time.minutes)));
}
