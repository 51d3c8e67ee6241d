/** The faces a page is set in. `music` holds the signs of notation (SMuFL), `music-text` the accidentals among words. */
export type FaceId =
  | 'serif-light'
  | 'serif'
  | 'serif-italic'
  | 'serif-bold'
  | 'serif-bold-italic'
  | 'sans'
  | 'sans-italic'
  | 'sans-semibold'
  | 'sans-bold'
  | 'mono'
  | 'music'
  | 'music-text'
  | 'symbols'

/** All faces in the one fixed order in which they are registered, so that the same input gives the same bytes. */
export const FACE_IDS: readonly FaceId[] = [
  'serif-light',
  'serif',
  'serif-italic',
  'serif-bold',
  'serif-bold-italic',
  'sans',
  'sans-italic',
  'sans-semibold',
  'sans-bold',
  'mono',
  'music',
  'music-text',
  'symbols',
]

/** The bytes of each face: full TrueType or OpenType files, handed in by whoever has a disk. */
export type FontBytes = Readonly<Record<FaceId, Uint8Array>>
