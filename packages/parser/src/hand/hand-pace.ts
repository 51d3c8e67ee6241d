/**
 * How fast the fingers of a fretting hand are: seconds to leave and settle, and seconds for each doubling of the way. The form is
 * Fitts's law (1954) as MacKenzie writes it (1992), both from memory; the numbers are judgement, so whoever knows better may give their own.
 */
export interface HandPace {
  readonly settleS: number
  readonly travelS: number
}

/** The pace that changes are judged by unless another is given; judgement. */
export const COMMON_PACE: HandPace = { settleS: 0.08, travelS: 0.06 }
