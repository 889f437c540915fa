// The part of the package `sat` that is used here; it ships no types of its own.
declare module 'sat' {
    class Vector {
        constructor(x: number, y: number);
    }
    class Circle {
        constructor(middle: Vector, radius: number);
    }
    /** Convex, its corners counter-clockwise and seen from `origin`. */
    class Polygon {
        constructor(origin: Vector, corners: Vector[]);
    }
    class Response {
        /** How far one shape would have to move to be free of the other. */
        readonly overlap: number;
        clear(): this;
    }
    // A CommonJS module whose names Node can't tell beforehand: it has a default export alone.
    const sat: {
        readonly Vector: typeof Vector;
        readonly Circle: typeof Circle;
        readonly Polygon: typeof Polygon;
        readonly Response: typeof Response;
        testPolygonPolygon(one: Polygon, other: Polygon, response: Response): boolean;
        testPolygonCircle(polygon: Polygon, circle: Circle, response: Response): boolean;
        testCircleCircle(one: Circle, other: Circle, response: Response): boolean;
    };
    export default sat;
}
