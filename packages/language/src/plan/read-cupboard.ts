import type * as ast from '../grammar/generated/ast.js';
import type { Diet, Figure, Kind, LocalCode, Piece, Substance } from './cupboard.js';
import { dimensionOf, isPieceFlag } from './fact-words.js';
import { readContains, readEaten } from './read-menu.js';
import type { Named } from './origin.js';
import { ofType, type Scribe } from './read-scribe.js';

/** Other words for a thing, as they are written in its block. */
function alsoOf(clauses: readonly { readonly $type: string }[]): string[] {
    return clauses.flatMap((clause) => ('others' in clause ? (clause.others as string[]) : []));
}

/** Every source a thing's facts rest on, each once, in the order written. */
function sourcesOf(clauses: readonly { readonly $type: string }[]): string[] {
    const sources = clauses.flatMap((clause) =>
        'source' in clause && typeof clause.source === 'string' ? [clause.source] : [],
    );
    return [...new Set(sources)];
}

export function readPiece(scribe: Scribe, node: ast.Piece): Piece {
    scribe.block(node, 'fork');
    const facts = node.facts ?? [];
    const name = scribe.declare(node, 'name', 'piece');
    const of = <U extends ast.PieceFact>(type: U['$type']): U[] => ofType<ast.PieceFact, U>(facts, type);
    const tines = scribe.once(of<ast.FactTines>('FactTines'), 'tines');
    const low = tines && scribe.number(tines, 'from');
    const high = (tines && scribe.number(tines, 'to')) ?? low;
    return {
        name: name.name,
        family: node.family ?? 'fork',
        parent: scribe.named(node, 'parent', 'piece'),
        fresh: node.fresh,
        called: scribe.once(of<ast.FactCalled>('FactCalled'), 'called')?.words,
        also: alsoOf(facts),
        measures: readMeasures(scribe, 'piece', of<ast.FactMeasure>('FactMeasure')),
        flags: readFlags(scribe, of<ast.FactFlag>('FactFlag')),
        tines: low === undefined || high === undefined ? undefined : { low, high },
        suits: of<ast.FactFor>('FactFor').flatMap((fact) => scribe.names(fact, 'kinds', 'kind-or-drink')),
        on: of<ast.FactOn>('FactOn').flatMap((fact) => scribe.names(fact, 'plates', 'piece')),
        pairs: of<ast.FactPairs>('FactPairs').flatMap((fact) => scribe.names(fact, 'pieces', 'piece')),
        sources: sourcesOf(facts),
        origin: scribe.origin(node),
        nameOrigin: name.origin,
    };
}

/** @param words whose words they stand under */
function readMeasures(
    scribe: Scribe,
    words: 'piece' | 'code',
    facts: readonly (ast.FactMeasure | ast.CodeFigure)[],
): Record<string, Figure> {
    const measures: Record<string, Figure> = {};
    for (const fact of facts) {
        const dimension = dimensionOf(words, fact.what);
        const wanted = dimension && [dimension];
        const upto = 'upto' in fact && fact.upto ? scribe.quantity(fact.upto, wanted) : undefined;
        const size = scribe.quantity(fact.size, wanted, { unitFrom: 'upto' in fact ? fact.upto : undefined });
        if (size && fact.what) {
            measures[fact.what] = { low: size.value, high: upto?.value ?? size.value, size, source: fact.source };
            if (!dimension) {
                scribe.strangers.push({ word: fact.what, of: words, size, origin: scribe.at(fact, 'what') });
            }
        }
    }
    return measures;
}

function readFlags(scribe: Scribe, facts: readonly ast.FactFlag[]): Named[] {
    return facts.map((flag) => {
        const origin = scribe.at(flag, 'what');
        if (flag.what && !isPieceFlag(flag.what)) {
            scribe.strangers.push({ word: flag.what, of: 'piece', origin });
        }
        return { name: flag.what, origin };
    });
}

/** A kind with only what it states itself; `resolve.ts` fills in what its parents state. */
export function readKind(scribe: Scribe, node: ast.Kind): Kind {
    const clauses = node.clauses ?? [];
    const of = <U extends ast.KindClause>(type: U['$type']): U[] => ofType<ast.KindClause, U>(clauses, type);
    const one = <U extends ast.KindClause>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(of<U>(type), clause);
    const sort = node.sort ?? 'kind';
    const name = scribe.declare(node, 'name', sort);
    const eaten = one<ast.KindEaten>('KindEaten', 'eaten with');
    const range = one<ast.KindRange>('KindRange', 'at');
    const contains = one<ast.KindContains>('KindContains', 'usually contains');
    const portion = one<ast.KindPortion>('KindPortion', 'portion');
    const portionLow = scribe.quantity(portion?.from, ['volume', 'mass'], { unitFrom: portion?.to });
    return {
        name: name.name,
        sort,
        parent: scribe.named(node, 'parent', sort),
        fresh: node.fresh,
        called: one<ast.KindCalled>('KindCalled', 'called')?.words,
        also: alsoOf(clauses),
        lineage: [name.name],
        eaten: eaten && readEaten(scribe, eaten),
        vessels: of<ast.KindVessel>('KindVessel').map((vessel) => ({
            how: vessel.how,
            names: scribe.names(vessel, 'vessels', 'piece'),
        })),
        band: one<ast.KindBand>('KindBand', 'hot')?.band,
        range: range && readRange(scribe, range),
        of: of<ast.KindOf>('KindOf').flatMap((clause) => scribe.names(clause, 'what', 'substance')),
        usually: contains && readContains(scribe, contains as unknown as ast.Contains),
        follows: of<ast.KindFollows>('KindFollows').flatMap((clause) => scribe.names(clause, 'kinds', 'kind')),
        portion: portionLow && {
            low: portionLow,
            high: scribe.quantity(portion?.to, ['volume', 'mass']) ?? portionLow,
        },
        cookTo: scribe.quantity(one<ast.KindCookTo>('KindCookTo', 'cook to')?.temp, ['temperature']),
        strength: scribe.quantity(one<ast.KindStrength>('KindStrength', 'strength')?.share, ['share']),
        raw: one<ast.KindRaw>('KindRaw', 'raw')?.how,
        sources: sourcesOf(clauses),
        origin: scribe.origin(node),
        nameOrigin: name.origin,
    };
}

function readRange(scribe: Scribe, node: ast.KindRange): Kind['range'] {
    const low = scribe.quantity(node.from, ['temperature'], { unitFrom: node.to });
    const high = node.to ? scribe.quantity(node.to, ['temperature']) : low;
    return low && high && { low: low.value, high: high.value, source: node.source };
}

export function readSubstance(scribe: Scribe, node: ast.Substance): Substance {
    const clauses = node.clauses ?? [];
    const name = scribe.declare(node, 'name', 'substance');
    const called = ofType<ast.SubstanceClause, ast.SubstanceCalled>(clauses, 'SubstanceCalled');
    return {
        name: name.name,
        sort: node.sort ?? 'ingredient',
        parents: scribe.names(node, 'parents', 'substance'),
        requiredIn: ofType<ast.SubstanceClause, ast.RequiredIn>(clauses, 'RequiredIn').flatMap((clause) =>
            scribe.names(clause, 'codes', 'code'),
        ),
        eachByName: clauses.some((clause) => clause.$type === 'EachByName'),
        called: called.map((clause) => ({ words: clause.words, code: scribe.named(clause, 'code', 'code')?.name })),
        also: alsoOf(clauses),
        fresh: node.fresh,
        sources: sourcesOf(clauses),
        origin: scribe.origin(node),
        nameOrigin: name.origin,
    };
}

export function readDiet(scribe: Scribe, node: ast.Diet): Diet {
    const clauses = node.clauses ?? [];
    const name = scribe.declare(node, 'name', 'diet');
    const one = <U extends ast.DietClause>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(ofType<ast.DietClause, U>(clauses, type), clause);
    return {
        name: name.name,
        excludes: ofType<ast.DietClause, ast.DietExcludes>(clauses, 'DietExcludes').flatMap((clause) =>
            scribe.names(clause, 'what', 'substance'),
        ),
        statedOnly: clauses.some((clause) => clause.$type === 'DietStated'),
        term: one<ast.DietTerm>('DietTerm', 'term')?.term,
        mark: one<ast.DietMark>('DietMark', 'mark')?.mark,
        called: one<ast.DietCalled>('DietCalled', 'called')?.words,
        also: alsoOf(clauses),
        fresh: node.fresh,
        sources: sourcesOf(clauses),
        origin: scribe.origin(node),
        nameOrigin: name.origin,
    };
}

export function readLocalCode(scribe: Scribe, node: ast.LocalCode): LocalCode {
    const clauses = node.clauses ?? [];
    const name = scribe.declare(node, 'name', 'code');
    return {
        name: name.name,
        called: scribe.once(ofType<ast.LocalCodeClause, ast.CodeCalled>(clauses, 'CodeCalled'), 'called')?.words,
        zones: ofType<ast.LocalCodeClause, ast.CodeZones>(clauses, 'CodeZones').flatMap((clause) => clause.zones ?? []),
        figures: readMeasures(scribe, 'code', ofType<ast.LocalCodeClause, ast.CodeFigure>(clauses, 'CodeFigure')),
        fresh: node.fresh,
        sources: sourcesOf(clauses),
        origin: scribe.origin(node),
        nameOrigin: name.origin,
    };
}
