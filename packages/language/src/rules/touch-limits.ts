import type { Piece } from '../plan/cupboard.js';

/** How warm a thing may be for the hand that takes it, °C. */
export interface TouchLimits {
    readonly material: string;
    /** Warm and pleasant up to here. */
    readonly comfortable: number;
    /** Above it the guest must be told, and it is never laid before guests sit. */
    readonly told: number;
    /** Above it nobody is handed it. */
    readonly never: number;
}

/**
 * Planning limits of this project, drawn from published touch limits and the contact temperature of skin and object
 * (temperature §4.2, B1 to B4). They are not a standard. Children and the elderly burn sooner.
 */
const METAL: TouchLimits = { material: 'metal', comfortable: 43, told: 48, never: 55 };
/** Poor conductors give their heat to the skin more slowly. */
const CHINA: TouchLimits = { material: 'china', comfortable: 50, told: 50, never: 65 };

const METALS = ['metal', 'stainless', 'steel', 'silver', 'sterling', 'silver-plate', 'pewter', 'copper', 'aluminium'];
const POOR_CONDUCTORS = [
    'glass',
    'crystal',
    'wood',
    'horn',
    'plastic',
    'porcelain',
    'bone-china',
    'stoneware',
    'earthenware',
];

/** By the piece's material; where the cupboard names none, flatware is metal and everything else china. */
export function touchLimits(piece: Piece): TouchLimits {
    const isOf = (material: string): boolean =>
        material in piece.measures || piece.flags.some((flag) => flag.name === material);
    if (METALS.some(isOf)) {
        return METAL;
    }
    const material = POOR_CONDUCTORS.find(isOf);
    const isFlatware = piece.family === 'fork' || piece.family === 'knife' || piece.family === 'spoon';
    return material ? { ...CHINA, material } : isFlatware ? METAL : CHINA;
}
