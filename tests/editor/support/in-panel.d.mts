/** Words of a panel, in its page and its pictures, that hardly stand out from what is behind them. @param body of the page */
export function faintWords(body: unknown): readonly string[];
/** How high the smallest words of a picture are as they are seen, in dots. @param picture an svg of the page */
export function smallestWords(picture: unknown): number;
/** What of a panel's page is cut off at the right. @param body of the page */
export function widerThanPage(body: unknown): readonly string[];
/** Which boxes of a panel hold more than they show, to the side. @param boxes of the page */
export function scrolledAside(boxes: unknown): string[];
