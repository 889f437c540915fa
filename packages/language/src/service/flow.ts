/** A transport problem: units from sources to sinks at the least cost. Exact; small numbers of nodes, any number of units. */
export interface Transport {
    /** Units at each source. */
    readonly supply: readonly number[];
    /** Most units each sink takes; `Infinity` where it takes any. */
    readonly capacity: readonly number[];
    /** Cost of one unit by source and sink, a whole number ≥ 0; `undefined` where that way is closed. */
    readonly cost: readonly (readonly (number | undefined)[])[];
}

/**
 * Successive shortest paths (Busacker and Gowen): as many units as possible, and of those ways the cheapest.
 * @returns units by source and sink; what a row lacks against its supply found no way
 */
export function solveTransport({ supply, capacity, cost }: Transport): number[][] {
    const sources = supply.length;
    const sinks = capacity.length;
    const flow = supply.map(() => capacity.map(() => 0));
    const left = [...supply];
    const room = [...capacity];
    for (;;) {
        const path = cheapestPath();
        if (!path) {
            return flow;
        }
        const start = path[0]!.source;
        const end = path.at(-1)!.sink;
        const back = path.flatMap((step) => (step.from === undefined ? [] : [flow[step.source]![step.from]!]));
        const units = Math.min(left[start]!, room[end]!, ...back);
        for (const { source, sink, from } of path) {
            flow[source]![sink]! += units;
            if (from !== undefined) {
                flow[source]![from]! -= units;
            }
        }
        left[start]! -= units;
        room[end]! -= units;
    }

    /** Bellman and Ford over the residual ways, from any source with units left to any sink with room. */
    function cheapestPath(): { source: number; sink: number; from?: number }[] | undefined {
        const sourceCost = left.map((units) => (units > 0 ? 0 : Infinity));
        const sinkCost = room.map(() => Infinity);
        const sinkBy: (number | undefined)[] = room.map(() => undefined);
        const sourceBy: (number | undefined)[] = left.map(() => undefined);
        for (let round = 0; round <= sources + sinks; round++) {
            let changed = false;
            for (let source = 0; source < sources; source++) {
                for (let sink = 0; sink < sinks; sink++) {
                    const price = cost[source]![sink];
                    if (price === undefined) {
                        continue;
                    }
                    if (sourceCost[source]! + price < sinkCost[sink]!) {
                        sinkCost[sink] = sourceCost[source]! + price;
                        sinkBy[sink] = source;
                        changed = true;
                    }
                    if (flow[source]![sink]! > 0 && sinkCost[sink]! - price < sourceCost[source]!) {
                        sourceCost[source] = sinkCost[sink]! - price;
                        sourceBy[source] = sink;
                        changed = true;
                    }
                }
            }
            if (!changed) {
                break;
            }
        }
        let end: number | undefined;
        for (let sink = 0; sink < sinks; sink++) {
            if (
                room[sink]! > 0 &&
                sinkCost[sink]! < Infinity &&
                (end === undefined || sinkCost[sink]! < sinkCost[end]!)
            ) {
                end = sink;
            }
        }
        if (end === undefined) {
            return undefined;
        }
        const path: { source: number; sink: number; from?: number }[] = [];
        for (let sink: number | undefined = end; sink !== undefined;) {
            const source: number = sinkBy[sink]!;
            const from: number | undefined = sourceBy[source];
            path.unshift({ source, sink, ...(from === undefined ? {} : { from }) });
            sink = from;
        }
        return path;
    }
}
