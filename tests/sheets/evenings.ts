/** The evenings whose sheets are looked at as pages: one file each, without its ending. */
export const EVENINGS = [
    ...['lantern-supper', 'mess-night', 'summer-lunch', 'table-of-eight'].map(
        (name) => `examples/saltmarsh-hall/${name}`,
    ),
    // Much is wrong with this one.
    'tests/bench/banquet/banquet',
];
