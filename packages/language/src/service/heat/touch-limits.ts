import type { Piece } from '../../plan/cupboard.js';
import { materialOf } from './materials.js';

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

/** By the piece's material; where the cupboard names none, flatware is metal and everything else china. */
export function touchLimits(piece: Piece): TouchLimits {
    const material = materialOf(piece);
    const isFlatware = piece.family === 'fork' || piece.family === 'knife' || piece.family === 'spoon';
    if (material ? material.isMetal : isFlatware) {
        return METAL;
    }
    return material ? { ...CHINA, material: material.name } : CHINA;
}
