const examples = new Map<unknown, object>();

/**
 * The engine throws away what it has compiled for a class when it tidies up and no object of that class is left: so it
 * would, whenever nobody types for some seconds, for all that lives only while a text is looked at, and each would be slow
 * again at the keys after. So the last one made of each is kept.
 */
export function keepCompiled<Thing extends object>(thing: Thing): Thing {
    examples.set(thing.constructor, thing);
    return thing;
}
