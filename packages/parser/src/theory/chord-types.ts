/** A type of chord a shape may be named as, and how far-fetched the name is: a plain triad costs nothing. */
export interface ChordType {
  /** What follows the root, in the plainest spelling. */
  readonly suffix: string
  readonly cost: number
}

/** What a name costs beyond its type. */
export interface NamingCosts {
  readonly types: readonly ChordType[]
  /** The perfect fifth does not sound. */
  readonly noFifth: number
  /** Each other tone that does not sound. */
  readonly omission: number
  /** The perfect fifth is lowest. */
  readonly fifthBass: number
  /** The third is lowest. */
  readonly thirdBass: number
  /** Another tone of the chord is lowest. */
  readonly otherToneBass: number
  /** The lowest note is no tone of the chord. */
  readonly foreignBass: number
  /** The root does not sound. */
  readonly rootless: number
  /** Taken off where the root is a degree of the key. */
  readonly rootInKey: number
  /** Taken off where the chord before has the same root, or one a fifth above. */
  readonly followsChord: number
  /** Two names closer than this are both worth showing. */
  readonly close: number
  /** Names dearer than this are too far-fetched to suggest. */
  readonly dearest: number
}

/**
 * Plain names first; the order of the list breaks ties. Costs of types, omissions and basses were set by judgement, then moved one at a
 * time where it named more shapes of nine keys of an open chord data set as published; three keys were kept for measuring
 * (tests/outside/chord-naming.test.ts). What key and neighbour take off, and when two names are close, is judgement.
 */
export const NAMING_COSTS: NamingCosts = {
  types: [
    { suffix: '', cost: 0 },
    { suffix: 'm', cost: 0 },
    { suffix: '5', cost: 0.2 },
    { suffix: '7', cost: 0.6 },
    { suffix: 'm7', cost: 0.7 },
    { suffix: 'maj7', cost: 0.8 },
    { suffix: 'sus4', cost: 0.9 },
    { suffix: 'sus2', cost: 1 },
    { suffix: '6', cost: 1.4 },
    { suffix: 'm6', cost: 1.1 },
    { suffix: 'dim', cost: 0.8 },
    { suffix: 'aug', cost: 0.9 },
    { suffix: 'add9', cost: 1 },
    { suffix: 'madd9', cost: 1.1 },
    { suffix: '7sus4', cost: 1.1 },
    { suffix: 'm7b5', cost: 1.1 },
    { suffix: 'dim7', cost: 0.8 },
    { suffix: '9', cost: 1 },
    { suffix: 'm9', cost: 1.1 },
    { suffix: 'maj9', cost: 1.2 },
    { suffix: '69', cost: 1.4 },
    { suffix: 'm69', cost: 1.5 },
    { suffix: 'm(maj7)', cost: 1.5 },
    { suffix: '7b9', cost: 1.4 },
    { suffix: '7#9', cost: 1.4 },
    { suffix: '7b5', cost: 1.6 },
    { suffix: '7#5', cost: 1.4 },
    { suffix: '9b5', cost: 1.9 },
    { suffix: '9#5', cost: 1.8 },
    { suffix: '9#11', cost: 1.8 },
    { suffix: '11', cost: 1.5 },
    { suffix: 'm11', cost: 1.5 },
    { suffix: '13', cost: 1.5 },
    { suffix: 'maj11', cost: 1.8 },
    { suffix: 'maj13', cost: 1.8 },
    { suffix: 'm(maj9)', cost: 1.9 },
    { suffix: 'm(maj11)', cost: 2.2 },
    { suffix: 'm(maj7b5)', cost: 1.9 },
    { suffix: 'maj7b5', cost: 1.8 },
    { suffix: 'maj7#5', cost: 1.8 },
    { suffix: '(b5)', cost: 1.7 },
  ],
  noFifth: 0.6,
  omission: 0.25,
  fifthBass: 0.7,
  thirdBass: 1.1,
  otherToneBass: 1.5,
  foreignBass: 2,
  rootless: 3,
  rootInKey: 0.2,
  followsChord: 0.1,
  close: 0.9,
  dearest: 2.8,
}
