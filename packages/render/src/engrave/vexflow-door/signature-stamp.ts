import { Clef, KeySignature, type RenderContext, Stave, type StaveModifier, TimeSignature } from 'vexflow/core'
import { boundsOf } from '../../drawing/bounds.ts'
import type { DrawnItem } from '../../drawing/drawing.ts'
import { translate } from '../../drawing/place.ts'
import type { FontSet } from '../../fonts/font-set.ts'
import { useFonts } from './headless.ts'
import { Recorder } from './recorder.ts'

/** A sign at the start of a staff. Keys by fifths; `cancels` prints the naturals of that key instead. */
export type Signature =
  | { readonly kind: 'clef'; readonly clef: 'treble-8' | 'bass-8' | 'treble' }
  | { readonly kind: 'key'; readonly fifths: number; readonly cancels: number | null; readonly clef: 'treble' | 'bass' }
  | { readonly kind: 'time'; readonly count: number; readonly unit: number }

/** A recorded sign in staff spaces: its ink starts at x = 0; y from the top line. */
export interface SignatureStamp {
  readonly items: readonly DrawnItem[]
  readonly width: number
  readonly top: number
  readonly bottom: number
}

/** Major keys by fifths from -7 to 7, as VexFlow names them. */
const KEYS = ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#'] as const

/** Draws one sign of a stave into any VexFlow context. */
export function drawSignature(signature: Signature, context: RenderContext, fonts: FontSet): void {
  useFonts(fonts)
  const stave = new Stave(0, 0, 300, { spaceAboveStaffLn: 0 })
  if (signature.kind === 'key' && signature.clef === 'bass') stave.setClef('bass')
  const modifier = modifierOf(signature)
  stave.addModifier(modifier)
  stave.format()
  modifier.setContext(context)
  stave.setContext(context)
  modifier.drawWithStyle()
}

function modifierOf(signature: Signature): StaveModifier {
  switch (signature.kind) {
    case 'clef':
      return signature.clef === 'treble'
        ? new Clef('treble')
        : new Clef(signature.clef === 'bass-8' ? 'bass' : 'treble', 'default', '8vb')
    case 'key': {
      const name = KEYS[signature.fifths + 7] ?? 'C'
      const cancels = signature.cancels === null ? undefined : KEYS[signature.cancels + 7]
      return cancels === undefined ? new KeySignature(name) : new KeySignature(name, cancels)
    }
    case 'time':
      return new TimeSignature(`${signature.count}/${signature.unit}`)
  }
}

/** The recorded drawing of a sign; an empty key signature has no items and no width. */
export function signatureStamp(signature: Signature, fonts: FontSet): SignatureStamp {
  const kept = STAMPS.get(fonts) ?? new Map<string, SignatureStamp>()
  STAMPS.set(fonts, kept)
  const key = JSON.stringify(signature)
  const found = kept.get(key)
  if (found !== undefined) return found
  const recorder = new Recorder()
  drawSignature(signature, recorder, fonts)
  const bounds = boundsOf(recorder.items, fonts)
  const stamp: SignatureStamp =
    bounds === null
      ? { items: [], width: 0, top: 0, bottom: 0 }
      : {
          items: translate(recorder.items, -bounds.left, 0),
          width: bounds.right - bounds.left,
          top: bounds.top,
          bottom: bounds.bottom,
        }
  kept.set(key, stamp)
  return stamp
}

const STAMPS = new WeakMap<FontSet, Map<string, SignatureStamp>>()
