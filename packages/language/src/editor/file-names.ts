/** Small letters and figures joined by hyphens, for the name of a file. @param otherwise where nothing is left of the title */
export function fileStem(title: string, otherwise: string): string {
    const plain = title.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
    return (
        plain
            .replace(/[^\p{L}\p{N}]+/gu, '-')
            .replace(/^-+|-+$/g, '')
            .slice(0, 60) || otherwise
    );
}

/** A path for a new plan that is not taken, whatever the letters' size. @param within a folder with its slash, or nothing */
export function freePlanPath(plans: readonly string[], within: string, stem: string): string {
    const taken = new Set(plans.map((plan) => plan.normalize('NFC').toLowerCase()));
    for (let number = 1; ; number++) {
        const path = `${within}${stem}${number === 1 ? '' : `-${number}`}.cover`;
        if (!taken.has(path.normalize('NFC').toLowerCase())) {
            return path;
        }
    }
}
