import { nearest } from './nearest.js';

const known = new Map<string, boolean>();

/** True for a time zone of the IANA database, by its name or an older one. */
export function isZone(name: string): boolean {
    const answer = known.get(name) ?? lookUp(name);
    known.set(name, answer);
    return answer;
}

function lookUp(name: string): boolean {
    // The list of today's names takes a millisecond, a formatter, which knows the older ones too, ten.
    if (Intl.supportedValuesOf('timeZone').includes(name)) {
        return true;
    }
    try {
        return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
    } catch {
        return false;
    }
}

/** Zones of nearly the name, else of the city named alone (`Halifax`). */
export function nearestZones(written: string): string[] {
    const zones = Intl.supportedValuesOf('timeZone');
    const city = cityOf(written).toLowerCase();
    const near = nearest(written, zones);
    return near.length > 0 ? near : zones.filter((zone) => cityOf(zone).toLowerCase() === city).slice(0, 3);
}

function cityOf(zone: string): string {
    return zone.slice(zone.lastIndexOf('/') + 1);
}
