import type { InstrumentName } from '@barwise/parser'

/** What an instrument sounds like to a program: a sound of the MusicXML list, and a General MIDI program counted from 1. */
export interface InstrumentSound {
  readonly sound: string
  readonly program: number
}

/** Sources: MusicXML 4.0, sounds.xml; General MIDI 1, sound set: 26 steel guitar, 34 fingered electric bass, 25 nylon guitar. */
const SOUNDS: Readonly<Record<InstrumentName, InstrumentSound>> = {
  guitar: { sound: 'pluck.guitar.steel-string', program: 26 },
  bass: { sound: 'pluck.bass.electric', program: 34 },
  ukulele: { sound: 'pluck.ukulele', program: 25 },
}

/** The sound of an instrument; General MIDI has no ukulele and lends the nylon-string guitar. */
export function instrumentSound(name: InstrumentName): InstrumentSound {
  return SOUNDS[name]
}
