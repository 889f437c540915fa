/**
 * What every clause of the language says, in a sentence, and an example of it. `docs/language.md` is made of these and of the
 * grammar; `tests/language-reference.test.ts` holds the two to each other and reads every example.
 */
export interface ClauseNote {
    readonly says: string;
    /** As it stands in a plan. */
    readonly example: string;
}

const note = (says: string, example: string): ClauseNote => ({ says, example });

/** By the rule or the action of the grammar that reads the clause. */
export const CLAUSE_NOTES: Readonly<Record<string, ClauseNote>> = {
    // ---------------------------------------------------------------- a file
    UseFile: note('takes in another file, by its path from this one', 'use "house.cover"'),

    // ---------------------------------------------------------------- event
    DateClause: note('the day, year first', 'date 2026-10-17'),
    ZoneClause: note('the zone that the clock on the wall keeps', 'zone America/Halifax'),
    DoorsClause: note('when guests are let in', 'doors 18:30'),
    SeatedClause: note('when guests sit down: the evening is timed from here', 'seated 19:00'),
    EndsClause: note('when the last guest is to have gone', 'ends 23:30'),
    RentClause: note('pieces rented for this event, beside what the house owns', 'rent 30 salad-fork, 12 tablecloth'),
    RevisionClause: note(
        'the state of the plan, printed on every sheet; raise it when you hand out a new one',
        'revision 4',
    ),
    ReferenceClause: note(
        'a name of the event that never changes, for calendars',
        'reference "saltmarsh-lantern-2026"',
    ),
    NoticeClause: note('a sentence that guests are to read, on the menu card', 'notice "Ask us about allergens."'),
    ReplicationsClause: note(
        'the evening is run this often with chance, always the same for the same seed',
        'replications 200 seed 7',
    ),
    CrewClause: note('people of the team who eat, what and when', 'crew 14 eat "Braised chicken" at 17:15'),
    GuestsClause: note(
        'how many are expected; its rows say who among them needs what',
        'guests 84 guaranteed 80 set for 88 { 6 vegetarian }',
    ),
    Guaranteed: note('how many are paid for at least', 'guaranteed 80'),
    SetFor: note('how many places are laid', 'set for 88'),
    GuestRow: note(
        'so many guests inside the total, all of whose needs hold for each; a seat where it is known',
        '1 vegetarian without tree-nuts at T3 seat 5',
    ),
    Children: note('guests who are served no alcohol', '3 children'),
    Without: note(
        'guests who must not get these: allergens or ingredients of the cupboard',
        '2 without gluten and milk',
    ),
    DietNeed: note('guests who keep a diet of the cupboard', '6 vegetarian'),

    // ---------------------------------------------------------------- seating
    Seating: note(
        'named guests, best in a file of their own; sheets show initials unless asked for names',
        'seating { "A. Reeve" at T1 seat 2, is vegetarian, chooses "Squash" }',
    ),
    GuestSeat: note('where the guest sits', 'at T1 seat 2'),
    GuestNeed: note('what the guest needs', 'is vegetarian'),
    GuestChoice: note('the dishes the guest has chosen', 'chooses "Squash" and "Pear"'),

    // ---------------------------------------------------------------- menu
    Course: note(
        'a course of a kind, with its title; what all its dishes share stands in it',
        'course soup "Roast squash" { lasts 15 min }',
    ),
    Dish: note(
        'one of several dishes of a course, and who gets it',
        'dish "Leek tart" for vegetarian { contains wheat }',
    ),
    ForRest: note('whoever no other dish of the course is for', 'for the rest'),
    ForEveryone: note('all guests', 'for everyone'),
    ForSome: note('a number or a share of guests, or all who have a need', 'for 30 vegetarian'),
    Served: note(
        'what the dish comes on or in and how; several phrases, with or without commas',
        'served in soup-bowl warmed to 65 °C, at 75 °C',
    ),
    Eaten: note('the pieces it is eaten with, where not those of its kind', 'eaten with fish-fork and fish-knife'),
    Lasts: note('how long guests eat, and how much that varies', 'lasts 35 min, give or take 5 min'),
    Contains: note('the allergens; `nothing` says that there are none', 'contains wheat, milk'),
    Suits: note(
        'diets that the dish meets, where the cupboard can’t tell from what it contains',
        'suits halal, kosher',
    ),
    Recipe: note('the recipe, a Markdown file or schema.org JSON beside the plan', 'recipe "recipes/squash.md"'),
    HeldAt: note('how warm or cold it waits, and how long', 'held at 65 °C for 2 h'),
    LeavesPass: note('how warm it is when it leaves the kitchen', 'leaves the pass at 70 °C'),
    CookTo: note('how hot its middle gets', 'cook to 74 °C for 15 s'),
    CookExtra: note('portions cooked beside those that are ordered', 'cook 3 extra'),
    ReheatTo: note('how hot it is made again, and in what time', 'reheat to 74 °C in 2 h'),
    Cooled: note('how it was cooled, step by step', 'cooled to 21 °C in 2 h, to 5 °C in 4 h'),
    Measured: note('what a thermometer said once: the estimate is moved to it', 'measured 68 °C after 3 min'),
    Carried: note('plates travel under covers, or without', 'carried covered'),
    StartsAt: note('the course waits for this time', 'starts at 19:20'),
    Plated: note('how long each hand takes on one plate', 'plated in 10 s, 6 s'),
    PlatedAhead: note('plates are made before and wait in this gear', 'plated ahead into hot-box'),
    Preset: note('it stands on the table when guests sit, or so long before', 'preset 10 min before seating'),
    InVessel: note('the plate, bowl or cup, warmed or chilled', 'served on dinner-plate warmed to 65 °C'),
    AtTemperature: note('how warm it is to reach the guest', 'served on dinner-plate at 64 °C'),
    Portion: note('how much of it', 'served in soup-bowl, portion 240 ml'),
    FromSide: note('the side it is served from, where not the house’s', 'served on dinner-plate, from the left'),
    PouredAtTable: note('it is poured in front of the guest', 'served in soup-bowl, poured at table from sauce-jug'),
    Within: note('the longest a plate may take from plating to its guest', 'served in sorbet-coupe, within 5 min'),
    Rawness: note('it is served raw or undercooked: guests must be told', 'served on dinner-plate, undercooked'),
    PieceUse: note(
        'a piece, warmed or chilled, laid or brought with the course',
        'eaten with salad-fork, brought with the course',
    ),
    Accompaniment: note(
        'what goes with it: sauce, garnish or butter, with allergens of its own',
        'sauce "Gravy", passed { contains wheat }',
    ),
    AccompanimentPoured: note('poured in front of the guest', 'sauce "Gravy" poured at table from sauce-jug'),
    AccompanimentPassed: note('handed round', 'sauce "Gravy", passed'),
    LeftOff: note('these guests go without it', 'garnish "Croutons" left off for guests without gluten'),

    // ---------------------------------------------------------------- drinks
    Pour: note('a drink of this course', 'pour "Country red" 100 ml into red-wine-glass at 17 °C, is full-red-wine'),
    PourAmount: note('how much at a time', 'pour "Country red" 100 ml'),
    IntoGlass: note('the glass', 'pour "Country red" 100 ml into red-wine-glass'),
    PourAt: note('how cold or warm', 'pour "Country red" 100 ml at 17 °C'),
    PourKind: note('the sort of drink', 'pour "Country red" 100 ml, is full-red-wine'),
    PourFor: note('who gets it', 'pour "Apple juice" 100 ml, for children'),
    Refill: note('how often it is poured again', 'pour "Country red" 100 ml, refill 1'),
    ToppedUp: note('the glass is kept full until that course', 'pour "Country red" 100 ml, topped up until main'),
    Tasted: note('the host tastes before others get it', 'pour "Country red" 100 ml, tasted by the host'),
    GlassBrought: note(
        'the glass is not laid, it comes with the course',
        'pour "Country red" 100 ml, brought with the course',
    ),
    Strength: note('how much of it is alcohol', 'pour "Country red" 100 ml { strength 13 % }'),
    BottleSize: note('the bottles it comes in', 'pour "Country red" 100 ml { from bottles of 750 ml or 1.5 l }'),
    ChilledBy: note('what chills it', 'pour "Country white" 100 ml { chilled in refrigerator }'),
    Instead: note(
        'what those get who do not drink it',
        'pour "Country red" 100 ml { instead "Grape juice" 100 ml, is juice }',
    ),

    // ---------------------------------------------------------------- beside the courses
    Bread: note(
        'bread, from one course until another',
        'bread from soup until main on bread-plate with butter-spreader { contains wheat }',
    ),
    BreadFrom: note('the course it is there from', 'bread from soup'),
    BreadUntil: note('the course it is cleared with', 'bread until main'),
    BreadPlate: note('what it lies on', 'bread on bread-plate'),
    BreadPiece: note('what butter is spread with', 'bread with butter-spreader'),
    Coffee: note('coffee or tea at the end', 'coffee after dessert, on request in coffee-cup with coffee-spoon'),
    OnRequest: note('each guest is asked', 'coffee after dessert, on request'),
    CoffeeCup: note('the cup', 'coffee after dessert in coffee-cup'),
    CoffeePiece: note('the piece with it', 'coffee after dessert with coffee-spoon'),
    CoffeeAt: note('how hot', 'coffee after dessert at 80 °C'),
    Water: note('the water on the table', 'water still and sparkling 180 ml into water-glass, topped up until dessert'),
    Toast: note(
        'a toast or a speech: nothing is served or cleared meanwhile',
        'toast "To the harbour" after main, lasts 4 min, with "Country red"',
    ),
    ToastWhen: note('before or after a course', 'speech "Welcome" before main'),
    ToastLasts: note('how long', 'speech "Welcome" before main, lasts 5 min'),
    ToastAt: note('at a time of the clock', 'speech "Welcome" at 20:15'),
    ToastWith: note(
        'the drink in the glasses, topped up where further courses have come since',
        'toast after main, with "Country red"',
    ),
    Wash: note(
        'these pieces are washed after one course and used again for another',
        'wash dessert-plate after salad for dessert',
    ),
    Lay: note(
        'how the pieces lie, where not as the customs say',
        'lay left dinner-fork right dinner-knife above dessert-fork',
    ),

    // ---------------------------------------------------------------- house
    Own: note(
        'what the house has, and what each piece of equipment holds',
        'own 120 dinner-plate, 2 plate-warmer { holds 60 plates }',
    ),
    Spare: note('how many more than needed are pulled', 'spare 5 % of water-glass'),
    Laying: note('the customs of the house, see docs/customs.md', 'laying { limit: 3 per side }'),
    Custom: note('one custom: a figure or a choice', 'laying { limit: 3 per side   dessert: above }'),
    Washing: note('how fast it washes and polishes', 'washing { 45 racks per hour   polish 300 pieces per hour }'),
    WashRate: note('so many a time', 'washing { 45 racks per hour }'),
    WashFigure: note('another figure of the dishwasher', 'washing { cycle 90 s }'),
    CodeClause: note('whose food code is in force', 'local code canada'),
    RuleSetting: note(
        'how grave a rule is in this house, and why',
        'rule wine-temperature is off because "cellar wines"',
    ),
    Waiver: note('this finding is accepted here, and why', 'waive wine-temperature because "the host’s own wine"'),

    // ---------------------------------------------------------------- room and team
    Room: note('the room, wall to wall', 'room "Long gallery" 18 m by 11 m { at 20 °C }'),
    Tables: note('tables of one sort; `row of 3` joins them', 'table T1 to T6: round 60 inch, 8 seats'),
    RoomAt: note('how warm its air is', 'at 20 °C'),
    Aisle: note('the room people need between chairs', 'aisle 1.5 m'),
    PassOn: note('the wall at which plates are taken', 'pass on the far'),
    TableCount: note(
        'seats of each table, and how many of them a wheelchair reaches',
        'table T1: round 60 inch, 8 seats, 1 accessible',
    ),
    TableAt: note(
        'where its middle stands, from the left and the near wall',
        'table T1: round 60 inch, 8 seats, at 3 m by 4 m',
    ),
    TableTurned: note(
        'its long side runs away from the near wall',
        'table T9: rectangle 72 inch by 30 inch, 6 seats, turned',
    ),
    Role: note(
        'people of one role, how fast each is and the stations of a plating line',
        'servers 6   plating-lines 2 with stations of 3 s, 4 s',
    ),
    Tasks: note(
        'what is to be done before guests come, or after they have gone',
        'setup { task "Chairs" takes 20 min }',
    ),
    Task: note('one piece of work', 'setup { task "Cloths" takes 30 min, after "Chairs", by 4 servers }'),
    TaskTakes: note('how long it takes', 'setup { task "Chairs" takes 20 min }'),
    TaskBetween: note(
        'the least and the most it takes',
        'setup { task "Cloths" takes 30 min, between 20 min and 40 min }',
    ),
    TaskAfter: note(
        'what must be done before it',
        'setup { task "Chairs" takes 20 min  task "Cloths" takes 30 min, after "Chairs" }',
    ),
    TaskBy: note('who does it', 'setup { task "Cloths" takes 30 min, by 4 servers }'),

    // ---------------------------------------------------------------- cupboard
    Kind: note('a kind of dish or drink; `is` takes over what another says', 'kind cold-soup is soup { cold }'),
    KindEaten: note('what it is eaten with', 'kind trout is fish { eaten with fish-fork and fish-knife }'),
    KindVessel: note('what it is served on or in', 'kind chowder is soup { in soup-bowl or soup-plate }'),
    KindBand: note('hot, warm, cool, cold or frozen', 'kind cold-soup is soup { cold }'),
    KindRange: note('how warm it is served', 'drink country-white { at 8 °C to 12 °C }'),
    KindOf: note('the ingredients that make it what it is', 'kind trout is fish { of fish }'),
    KindContains: note(
        'the allergens such dishes mostly have: a reminder, never taken for stated',
        'kind chowder is soup { usually contains milk }',
    ),
    KindFollows: note('what it comes after in a menu', 'kind savoury { follows dessert }'),
    KindPortion: note('how much is usual', 'kind chowder is soup { portion 200 ml to 250 ml }'),
    KindCookTo: note('how hot its middle must get', 'kind chicken { cook to 74 °C }'),
    KindStrength: note('how much of it is alcohol', 'drink country-white { strength 12 % }'),
    KindRaw: note('it is served raw or undercooked', 'kind tartare { raw }'),
    KindCalled: note('what people call it', 'kind chowder is soup { called "chowder" }'),
    KindAlso: note(
        'other words for it: whoever writes one is told which word it is here',
        'kind chowder is soup { also fish-soup }',
    ),
    Piece: note(
        'a piece: fork, knife, spoon, glass, bowl, plate, cup, linen or gear',
        'fork lobster-fork { length 190 mm  for fish }',
    ),
    FactFor: note('the kinds it is for', 'fork lobster-fork { for fish }'),
    FactTines: note('how many tines', 'fork lobster-fork { tines 2 to 3 }'),
    FactOn: note('the plate it stands on', 'bowl chowder-bowl { on dinner-plate }'),
    FactPairs: note('the pieces it goes with', 'fork lobster-fork { pairs with fish-knife }'),
    FactCalled: note('what people call it', 'fork lobster-fork { called "lobster fork" }'),
    FactAlso: note(
        'other words for it: whoever writes one is told which word it is here',
        'plate service-plate { also charger }',
    ),
    FactMeasure: note(
        'what it measures: across, length, width, height, depth or surface; holds, a content; widest, a share of it; or its mass, under what it is made of',
        'bowl chowder-bowl { holds 300 ml  porcelain 480 g }',
    ),
    FactFlag: note('something it simply is: what it is made of, or stem or handle', 'plate steel-plate { heatproof }'),
    Substance: note('an allergen or an ingredient, and what it is a sort of', 'allergen spelt is wheat'),
    RequiredIn: note('the codes in which guests must be told of it', 'allergen spelt is wheat { required in eu }'),
    EachByName: note('the code lists its sorts one by one', 'allergen orchard-nuts { each by name }'),
    SubstanceCalled: note('what menus call it, in a code', 'allergen spelt is wheat { called "wheat (spelt)" in eu }'),
    SubstanceAlso: note(
        'other words for it: whoever writes one is told which word it is here',
        'allergen prawn is crustaceans { also shrimp }',
    ),
    Diet: note('what those who keep it leave out', 'diet no-pork { excludes pork }'),
    DietExcludes: note('what it leaves out', 'diet no-pork { excludes pork }'),
    DietStated: note('only a dish that says so suits it, whatever it contains', 'diet house-kosher { stated only }'),
    DietTerm: note('the word on menus', 'diet no-pork { term "no pork" }'),
    DietMark: note('the letter at the seat', 'diet no-pork { mark "P" }'),
    DietCalled: note('what people call it', 'diet no-pork { called "no pork" }'),
    DietAlso: note(
        'other words for it: whoever writes one is told which word it is here',
        'diet gluten-free { also coeliac, celiac }',
    ),
    LocalCode: note(
        'a local food code: where it holds, and its figures',
        'code harbour-county { zones America/Halifax }',
    ),
    CodeCalled: note('its name', 'code harbour-county { called "the county’s food code" }'),
    CodeZones: note('the time zones in which it is likely in force', 'code harbour-county { zones America/Halifax }'),
    CodeFigure: note('a figure that it sets', 'code harbour-county { hot-holding 60 °C }'),
};
