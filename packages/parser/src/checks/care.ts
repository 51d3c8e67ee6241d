/** Ends every finding about reach or speed: a limit printed on paper does not know the hand. */
export const CARE = 'warm up, stop at pain, tingling or numbness; a teacher or a medical professional has the last word'
