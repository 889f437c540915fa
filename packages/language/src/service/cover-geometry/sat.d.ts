// The part of the package `sat` that is used here; it ships no types of its own.
declare module 'sat' {
    export class Vector {
        constructor(x: number, y: number);
        readonly x: number;
        readonly y: number;
    }
    export class Circle {
        constructor(middle: Vector, radius: number);
    }
    /** Convex, its corners counter-clockwise and seen from `origin`. */
    export class Polygon {
        constructor(origin: Vector, corners: Vector[]);
    }
    export class Response {
        /** How far one shape would have to move to be free of the other. */
        readonly overlap: number;
        clear(): this;
    }
    export function testPolygonPolygon(one: Polygon, other: Polygon, response: Response): boolean;
    export function testPolygonCircle(polygon: Polygon, circle: Circle, response: Response): boolean;
    export function testCircleCircle(one: Circle, other: Circle, response: Response): boolean;
}
