import { Recorder } from './recorder.ts'

/** A context that takes every call and keeps nothing: what drawing costs without a drawing. */
export class SilentContext extends Recorder {
  override beginPath(): this {
    return this
  }
  override rect(): this {
    return this
  }
  override moveTo(): this {
    return this
  }
  override lineTo(): this {
    return this
  }
  override bezierCurveTo(): this {
    return this
  }
  override quadraticCurveTo(): this {
    return this
  }
  override arc(): this {
    return this
  }
  override closePath(): this {
    return this
  }
  override fill(): this {
    return this
  }
  override stroke(): this {
    return this
  }
  override fillRect(): this {
    return this
  }
  override fillText(): this {
    return this
  }
}
