/**
 * Reads the English steps of a part back into events. Uses nothing of the renderer: only the words, and the rules that the words
 * themselves state. A sound lasts until the next thing that is told.
 */

export interface DecodedNote {
  readonly string: number
  readonly fret: number | null
  readonly from: string
  readonly fromFret: number | null
}

export interface Decoded {
  at: number
  readonly kind: 'strike' | 'scratch' | 'rest'
  readonly stroke: string | null
  notes: DecodedNote[]
  readonly strings: readonly number[] | null
  readonly marks: readonly string[]
  readonly palmMuted: boolean
  readonly rolled: boolean
}

export interface DecodedBar {
  readonly number: number
  readonly length: number
  readonly events: Decoded[]
  readonly alternatives: { readonly at: number; readonly events: Decoded[] }[]
}

interface Count {
  readonly beats: number
  readonly slots: number
  readonly beatTicks: number
  readonly style: 'down' | 'alternate' | 'pluck'
}

interface Frame {
  readonly at: number
  readonly length: number
  readonly parts: number
}

const NUMBERS = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]
const ORDINALS = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth']
const LIST = String.raw`(?:\d+–\d+|\d+(?:, \d+)*(?: and \d+)?)`
const PLACE = String.raw`(?:on the ‘\w+’ of \d+|on ‘\w+’|on \d+|on the \w+ of the outer \w+|on the \w+ of \w+ in beat \d+|on the \w+ in beat \d+|on the \w+|just after the ‘\w+’ of \d+|just after ‘\w+’|just after \d+)`

function toNumber(word: string): number {
  const index = NUMBERS.indexOf(word.toLowerCase())
  return index >= 0 ? index : Number(word)
}

function list(text: string): number[] {
  const range = text.match(/^(\d+)–(\d+)$/)
  if (range !== null) {
    const [from, to] = [Number(range[1]), Number(range[2])]
    return Array.from({ length: to - from + 1 }, (_, i) => from + i)
  }
  return text.split(/, | and /).map(Number)
}

export function decodePart(text: string): DecodedBar[] {
  return new Decoder(text).decode()
}

class Decoder {
  private readonly shapes = new Map<string, Map<number, number>>()
  private readonly bars = new Map<number, DecodedBar>()
  private readonly same = new Map<number, number>()
  private head: Count = { beats: 4, slots: 4, beatTicks: 3360, style: 'alternate' }
  private readonly text: string

  // The card being read.
  private count: Count = this.head
  private everyBeatIn: number | null = null
  private everyRing = false
  /** Whether an alternative is being read. */
  private aside = false
  private firstBeat = 0
  private bar: DecodedBar = { number: -1, length: 0, events: [], alternatives: [] }
  private describing: string | null = null
  private cuts: Frame[] = []

  // The item being read.
  private item = { from: 1, to: 1 }
  private into: Decoded[] = []
  private cursor: number | null = null
  private cut: Frame | null = null
  private justCut = false
  private itemStarted = false

  constructor(text: string) {
    this.text = text
  }

  decode(): DecodedBar[] {
    const blocks = this.text.trim().split('\n\n')
    const lines = blocks.flatMap((block) => block.split('\n'))
    for (const line of lines) this.readSame(line)
    this.head = this.readCount(blocks[0] ?? '') ?? this.head
    for (const block of blocks.slice(1)) {
      if (/^(Bar \d+|Pickup)(, also .*)?\.\n/.test(block)) this.readCard(block.split('\n'))
    }
    for (const [bar, as] of this.same) {
      const source = this.bars.get(as)
      if (source === undefined) throw new Error(`bar ${bar} is told as bar ${as}, which is not told`)
      this.bars.set(bar, { ...source, number: bar, alternatives: [] })
    }
    return [...this.bars.values()].sort((a, b) => a.number - b.number)
  }

  private readSame(line: string): void {
    const same = line.match(new RegExp(`^Bars? (${LIST}) (?:is|are) bar (\\d+)\\.`))
    if (same !== null) for (const bar of list(same[1]!)) this.same.set(bar, Number(same[2]))
    const run = line.match(/^Bars (\d+)–(\d+) repeat bars? (\d+)(?:–(\d+))?\.$/)
    if (run === null) return
    const [from, to, start] = [Number(run[1]), Number(run[2]), Number(run[3])]
    const period = Number(run[4] ?? run[3]) - start + 1
    for (let bar = from; bar <= to; bar++) {
      const source = start + ((bar - from) % period)
      this.same.set(bar, this.same.get(source) ?? source)
    }
  }

  private readCount(text: string): Count | null {
    const match = text.match(/Count (\d+)\/(\d+) as ([^.]*)\.(?: (Every stroke|Thumb|The strumming))?/)
    if (match === null) return null
    const row = match[3]!.split(' ')
    const beats = row.filter((word) => /^\d/.test(word)).length
    const barTicks = (Number(match[1]) * 4 * 3360) / Number(match[2])
    const style = match[4] === 'Every stroke' ? 'down' : match[4] === 'Thumb' ? 'pluck' : 'alternate'
    return { beats, slots: row.length / beats, beatTicks: barTicks / beats, style }
  }

  private readCard(lines: readonly string[]): void {
    const number = lines[0]!.startsWith('Pickup') ? 0 : Number(lines[0]!.match(/\d+/)![0])
    this.count = this.head
    this.everyBeatIn = null
    this.everyRing = false
    this.firstBeat = 0
    this.cuts = []
    const items: [string, string][] = []
    let as: RegExpMatchArray | null = null
    for (const line of lines.slice(1)) {
      const item = line.match(/^(\d+(?:–\d+)?|or): (.*)$/)
      if (item !== null) items.push([item[1]!, item[2]!])
      else if (line.startsWith('As bar'))
        as = line.match(/^As bar (\d+)(?: to the end of beat (\d+), then:|, but beats? (.+):)$/)
      else if (!line.startsWith('Say:')) {
        this.count = this.readCount(line) ?? this.count
        if (line.includes('Let every stroke ring.')) this.everyRing = true
        const every = line.match(/Every beat is in (\w+)/)
        if (every !== null) this.everyBeatIn = toNumber(every[1]!)
      }
    }
    const { beats, beatTicks } = this.count
    if (number === 0) this.firstBeat = Number(items[0]![0].split('–')[0]) - 1
    const length = (beats - this.firstBeat) * beatTicks
    this.bar = { number, length, events: [], alternatives: [] }
    let after: Decoded[] = []
    if (as !== null) {
      const source = this.bars.get(Number(as[1]))!
      const told =
        as[3] === undefined
          ? Array.from({ length: beats - Number(as[2]) }, (_, i) => Number(as[2]) + 1 + i)
          : list(as[3])
      const from = (told[0]! - 1) * beatTicks
      const to = told.at(-1)! * beatTicks
      this.bar.events.push(...source.events.filter((event) => event.at < from))
      after = source.events.filter((event) => event.at >= to)
    }
    let lastBeats = { from: 1, to: 1 }
    for (const [label, words] of items) {
      const [from, to] = label.split('–').map(Number)
      const or = label === 'or'
      const lead = words.match(/^(?:Beats? (\d+)(?:–(\d+))?, )?(?:[Ee]asier|[Aa]nother way): /)
      if (!or) lastBeats = { from: from!, to: to ?? from! }
      this.item = or
        ? lead?.[1] === undefined
          ? lastBeats
          : { from: Number(lead[1]), to: Number(lead[2] ?? lead[1]) }
        : lastBeats
      if (!or) this.readItem(words, this.bar.events)
      else {
        const at = this.beatStart(this.item.from)
        const before = [...this.bar.events, ...after].filter((event) => event.at < at)
        const into = [...before]
        const cuts = this.cuts
        this.cuts = []
        this.aside = true
        this.readItem(words.slice(lead![0].length), into)
        this.cuts = cuts
        this.aside = false
        this.bar.alternatives.push({ at, events: into.slice(before.length) })
      }
    }
    this.bar.events.push(...after)
    if (number === 0 && this.bar.events[0]?.at !== 0) this.bar.events.unshift(rest(0))
    this.bars.set(number, this.bar)
  }

  private beatStart(beat: number): number {
    return (beat - this.firstBeat - 1) * this.count.beatTicks
  }

  private readItem(words: string, into: Decoded[]): void {
    this.into = into
    this.cursor = null
    this.cut = null
    this.itemStarted = false
    const spoken = words.replace(/“[^”]*”/g, '').trim()
    for (const sentence of spoken.split(/(?<=\.) /)) {
      const bare = sentence.replace(/\.$/, '').trim()
      if (bare !== '') this.readSentence(bare)
    }
  }

  private readSentence(whole: string): void {
    let sentence = whole
    this.justCut = false
    for (let nested = true; nested; ) {
      const cut = sentence.match(
        new RegExp(
          String.raw`^(?:in (\w+)|beat \d+ in (\w+)|(\w+) over beats (${LIST})|split (.+?) in (\w+)): (.*)$`,
          'i',
        ),
      )
      if (cut !== null && !this.shapes.has(cut[1] ?? '')) {
        this.openCut(cut)
        sentence = cut[7]!
      } else nested = false
    }
    const again = sentence.match(/(?:as|are|is) beat (\d+)(?: again)?$/i)
    if (again !== null && /^(As|Each as|Beats?) /.test(sentence)) {
      this.copyBeat(Number(again[1]))
      return
    }
    if (/^(It implies|(For .+, )?(finger \d|the thumb) keeps)/i.test(sentence)) return
    if (
      /^(.+ rings (over|on through) |Nothing new on|Still silent on|The sound from|Let the sound from)/.test(sentence)
    ) {
      const named = sentence.match(/^(.+) rings (?:over|on through) /)?.[1]
      if (named !== undefined && this.shapes.has(named)) {
        this.lastShape = named
        this.hand = new Map(this.shapes.get(named))
      }
      if (!sentence.includes(';')) return
    }
    if (this.readDescription(sentence)) return
    if (this.describing !== null) this.hand = new Map(this.shapes.get(this.describing))
    this.describing = null
    const stops = sentence.match(new RegExp(`^Strings? (${LIST}) stops?$`))
    if (stops !== null) {
      const last = this.into.at(-1)!
      last.notes = last.notes.filter((note) => !list(stops[1]!).includes(note.string))
      return
    }
    sentence = sentence.replace(/^press again: /i, '')
    if (/^lift fingers? /i.test(sentence)) return
    const held = sentence.match(/^hold (.*)$/i)
    if (held !== null) {
      this.pending = this.what(held[1]!)
      return
    }

    if (
      this.readRest(sentence) ||
      this.readScratch(sentence) ||
      this.readUnstruck(sentence) ||
      this.readStrike(sentence)
    )
      return
    throw new Error(`not understood: ${whole}`)
  }

  private openCut(cut: RegExpMatchArray): void {
    const parts = toNumber((cut[1] ?? cut[2] ?? cut[3] ?? cut[6])!)
    if (cut[4] !== undefined) {
      const beats = list(cut[4])
      this.cut = { at: this.beatStart(beats[0]!), length: beats.length * this.count.beatTicks, parts }
    } else if (cut[5] !== undefined) {
      const places = cut[5].split(/, | and (?=the|‘|\d|just)/).map((place) => place.replace(/^(?=the|‘|\d)/, 'on '))
      const frame = this.frameOf(places[0]!)
      const at = this.ticksOf(places[0]!)
      this.cut = { at, length: places.length * (frame.length / frame.parts), parts }
    } else {
      const beat = /^beat (\d+)/i.exec(cut[0])?.[1]
      this.cut = {
        at: this.beatStart(beat === undefined ? this.item.from : Number(beat)),
        length: this.count.beatTicks,
        parts,
      }
    }
    this.cuts.push(this.cut)
    this.justCut = true
  }

  /** Slots of a beat: as cut, as every beat of the card, or as the hand swings. */
  private beatFrame(beat: number): Frame {
    const at = this.beatStart(beat)
    const length = this.count.beatTicks
    const cut = this.cuts.find((one) => one.at === at && one.length === length)
    return cut ?? { at, length, parts: this.everyBeatIn ?? this.count.slots }
  }

  private frameOf(place: string): Frame {
    const ordinal = place.match(/the (?:[a-z]+|\d+th)(?: of the outer (\w+)| of (\w+) in beat (\d+)| in beat (\d+))?$/)
    if (ordinal !== null) {
      const [, outer, own, ownBeat, beat] = ordinal
      if (outer !== undefined) {
        const from = this.beatStart(this.item.from)
        const wide = this.cuts.filter((cut) => cut.at >= from && cut.parts === toNumber(outer))
        return wide.sort((a, b) => b.length - a.length)[0]!
      }
      if (beat !== undefined) return this.beatFrame(Number(beat))
      if (own === undefined) return this.cut ?? this.beatFrame(this.item.from)
      const starts = (cut: Frame): number => this.firstBeat + Math.floor(cut.at / this.count.beatTicks) + 1
      return (
        this.cuts.findLast((cut) => cut.parts === toNumber(own) && starts(cut) === Number(ownBeat)) ??
        this.beatFrame(Number(ownBeat))
      )
    }
    const beat = place.match(/(?:of|in beat|on|after) (\d+)$/)?.[1]
    return this.beatFrame(beat === undefined ? this.item.from : Number(beat))
  }

  private ticksOf(place: string): number {
    const frame = this.frameOf(place)
    const slot = frame.length / frame.parts
    const ordinal = place.match(/the ([a-z]+|\d+th)(?: of the outer \w+| of \w+ in beat \d+| in beat \d+)?$/)?.[1]
    if (ordinal !== undefined) {
      const index = ORDINALS.indexOf(ordinal)
      return frame.at + ((index > 0 ? index : Number.parseInt(ordinal, 10)) - 1) * slot
    }
    const name = place.match(/‘(\w+)’/)?.[1] ?? 'number'
    const late = place.startsWith('just after')
    const names: Record<number, string[]> = {
      1: ['number'],
      2: ['number', 'and'],
      3: ['number', 'and', 'a'],
      4: ['number', 'e', 'and', 'a'],
    }
    const direct = names[frame.parts]?.indexOf(name) ?? -1
    if (direct >= 0 && !late) return frame.at + direct * slot
    if (name === 'number' && !late) return frame.at
    const half = names[frame.parts / 2]!.indexOf(name)
    return frame.at + (half * 2 + (late ? 1 : 0)) * slot
  }

  /** Puts a run of events down at a place, or at the place that needs no saying. */
  private put(place: string | undefined, made: readonly Omit<Decoded, 'at'>[]): void {
    let at: number
    if (place !== undefined) at = this.ticksOf(place)
    else if (this.justCut) at = this.cut!.at
    else if (!this.itemStarted) at = this.beatStart(this.item.from)
    else if (this.cursor !== null) at = this.cursor
    else throw new Error('no place said')
    const holding = this.cuts.filter((cut) => at >= cut.at && at < cut.at + cut.length)
    const inner = holding.reduce<Frame | null>(
      (best, cut) => (best === null || cut.length <= best.length ? cut : best),
      null,
    )
    const frame = inner ?? this.beatFrame(this.firstBeat + Math.floor(at / this.count.beatTicks) + 1)
    const slot = frame.length / frame.parts
    for (const event of made) {
      this.into.push({ ...event, notes: event.notes.map((note) => ({ ...note })), at })
      at += slot
    }
    this.cursor = at < frame.at + frame.length ? at : null
    this.itemStarted = true
  }

  private copyBeat(beat: number): void {
    const source = this.beatStart(beat)
    const end = source + this.count.beatTicks
    const cuts = this.cuts.filter((cut) => cut.at >= source && cut.at < end)
    const events = this.into.filter((event) => event.at >= source && event.at < end)
    for (let to = this.item.from; to <= this.item.to; to++) {
      const shift = this.beatStart(to) - source
      for (const cut of cuts) this.cuts.push({ ...cut, at: cut.at + shift })
      for (const event of events) this.into.push({ ...event, notes: [...event.notes], at: event.at + shift })
    }
  }

  private name(text: string): string | null {
    return this.shapes.has(text) ? text : null
  }

  private readDescription(sentence: string): boolean {
    const first = sentence.match(/^(.+?): ((?:finger \d|the thumb|fret \d+|open string|no finger).*)$/)
    if (
      first !== null &&
      !/: (strike|pluck)/.test(sentence) &&
      !/^(Only|Back|Press|Lift|The whole|Straight)/.test(first[1]!)
    ) {
      this.describing = first[1]!
      this.lastShape = first[1]!
      this.shapes.set(first[1]!, first[2]!.startsWith('no finger') ? new Map() : presses(first[2]!, new Map()))
      return true
    }
    const like = sentence.match(/^(.+?) is (.+?) with (.*)$/)
    if (like !== null && this.name(like[2]!) !== null) {
      this.describing = like[1]!
      this.lastShape = like[1]!
      this.shapes.set(like[1]!, presses(like[3]!, new Map(this.shapes.get(like[2]!))))
      return true
    }
    if (this.describing === null) return false
    const shape = this.shapes.get(this.describing)!
    const more = sentence.match(/^(?:For .+, a|A)dd (.*)$/)
    if (more !== null && !/: (strike|pluck)/.test(sentence)) {
      presses(more[1]!, shape)
      return true
    }
    const open = sentence.match(new RegExp(`^(?:.+ leaves s|S)trings? (${LIST}) (?:rings? )?open$`))
    if (open !== null) {
      for (const string of list(open[1]!)) shape.set(string, 0)
      return true
    }
    const silent = sentence.match(new RegExp(`^(?:.+ keeps s|S)trings? (${LIST}) (?:stays? )?silent$`))
    if (silent === null) return false
    for (const string of list(silent[1]!)) shape.delete(string)
    return true
  }

  private readRest(sentence: string): boolean {
    const match = sentence.match(
      new RegExp(`^(?:silence|(?:ease|stop the strings))(?: (${PLACE}))?(?:: silence)?$`, 'i'),
    )
    if (match === null) return false
    this.put(match[1], [rest(0)])
    return true
  }

  private readScratch(sentence: string): boolean {
    const bare = sentence.replace(/^(ease|lay the fretting hand flat): /i, '')
    const match = bare.match(new RegExp(`^scratch(?: strings? (${LIST}))?(.*)$`, 'i'))
    if (match === null) return false
    const how = this.how(match[2]!.replace(/ while the hand travels to fret \d+$/, ''))
    const strings = match[1] === undefined ? null : list(match[1]).sort((a, b) => b - a)
    this.put(
      how.place,
      how.strokes.map((stroke) => ({ ...how.event, kind: 'scratch', stroke, strings, notes: [] })),
    )
    return true
  }

  /** Numbers of the bars played before the one being read, the nearest first. */
  private barsBefore(): number[] {
    const endings = [...this.text.matchAll(/Ending ([^:]+): bars? (\d+)/g)].map((match) => ({
      first: /^1\b/.test(match[1]!),
      from: Number(match[2]),
    }))
    const index = endings.findIndex(({ first, from }) => !first && from === this.bar.number)
    const start = index < 0 ? this.bar.number : endings.slice(0, index).findLast(({ first }) => first)!.from
    return Array.from({ length: start }, (_, i) => start - 1 - i)
  }

  private previous(): Decoded | undefined {
    const last = this.into.at(-1)
    if (last !== undefined) return last
    for (const number of this.barsBefore()) {
      const events = this.bars.get(this.same.get(number) ?? number)?.events
      if (events !== undefined && events.length > 0) return events.at(-1)
    }
    return undefined
  }

  /** The fret at which a string was last heard: in the stroke before, or ringing from an earlier one. */
  private soundingFret(string: number): number | null {
    const earlier = this.barsBefore().reverse()
    const events = earlier.flatMap((number) => this.bars.get(this.same.get(number) ?? number)?.events ?? [])
    const last = [...events, ...this.into].findLast((event) => event.notes.some((note) => note.string === string))
    return last?.notes.find((note) => note.string === string)?.fret ?? null
  }

  private readUnstruck(sentence: string): boolean {
    const match = sentence.match(new RegExp(`^(${PLACE}), (hammer|pull off to|slide|let it sound) (.*)$`, 'i'))
    if (match === null) return false
    const [, place, verb, rest] = match as unknown as [string, string, string, string]
    const [what, after] = cutAt(rest, /(, (?:with|softly|short|palm|then|rolled)|; )/)
    const how = this.how(after)
    const previous = this.previous()
    const before = previous?.kind === 'strike' ? previous.notes.filter((note) => note.fret !== null) : []
    const from = verb === 'hammer' ? 'hammered' : verb === 'slide' ? 'slid' : 'pulled'
    const goesOn = verb === 'let it sound'
    const moved = what.match(/^(?:it|both|the whole shape) (up|down) (\w+) frets?$/)
    const target = new Map<number, number | null>()
    if (moved !== null) {
      const by = toNumber(moved[2]!) * (moved[1] === 'up' ? 1 : -1)
      for (const note of before) target.set(note.string, note.fret! + by)
    } else if (!goesOn) presses(what, target)
    const notes: DecodedNote[] = before
      .filter((note) => !target.has(note.string))
      .map((note) => ({ ...note, from: 'held', fromFret: null }))
    for (const [string, fret] of target) notes.push({ string, fret, from, fromFret: this.soundingFret(string) })
    notes.sort((a, b) => b.string - a.string)
    this.put(place.toLowerCase(), [{ ...how.event, kind: 'strike', stroke: null, strings: null, notes }])
    return true
  }

  private readStrike(sentence: string): boolean {
    const read = this.strikeParts(sentence)
    if (read === null) return false
    const [frets, rest, verb] = read
    const how = this.how(rest, verb)
    if (this.everyRing && !this.aside) how.event.marks.push('ring')
    how.event.marks.sort()
    const notes = [...frets]
      .sort((a, b) => b[0] - a[0])
      .map(([string, fret]): DecodedNote => {
        const slid = fret === null ? undefined : how.slide(string, fret)
        return {
          string,
          fret,
          from: fret === null ? 'dead' : slid === undefined ? 'struck' : 'slid',
          fromFret: slid ?? null,
        }
      })
    this.put(
      how.place,
      how.strokes.map((stroke) => ({ ...how.event, kind: 'strike', stroke, strings: null, notes })),
    )
    return true
  }

  private strikeParts(sentence: string): [Map<number, number | null>, string, string] | null {
    const colon = sentence.match(/^(.+): (strike|pluck)(?![\w])(.*)$/)
    if (colon !== null) return [this.what(colon[1]!), colon[3]!, colon[2]!]
    const verb = sentence.match(/^(strike|pluck) (.*)$/i)
    const early = sentence.match(/^(.+?) comes early,(.*)$/)
    if (early !== null) return [this.what(early[1]!), early[2]!, 'strike']
    const caught = sentence.match(
      new RegExp(`^catch only strings? (${LIST})(?:,(?= (?:down|up|\\w+ times)))?(.*)$`, 'i'),
    )
    if (caught !== null)
      return [this.pick(list(caught[1]!)), caught[2]!, this.count.style === 'pluck' ? 'pluck' : 'strike']
    const text = verb?.[2] ?? sentence
    if (verb !== null && /^that\b/.test(text)) return [this.pending, text.slice('that'.length), verb[1]!.toLowerCase()]
    const name = [...this.shapes.keys()]
      .filter(
        (one) => text === one || text.startsWith(`${one} `) || text.startsWith(`${one},`) || text.startsWith(`${one};`),
      )
      .sort((a, b) => b.length - a.length)[0]
    if (name === undefined) {
      const only = text.match(new RegExp(`^strings? (${LIST})(.*)$`))
      return only === null || verb === null ? null : [this.pick(list(only[1]!)), only[2]!, verb[1]!.toLowerCase()]
    }
    this.lastShape = name
    this.hand = new Map(this.shapes.get(name))
    return [new Map(this.shapes.get(name)), text.slice(name.length), verb?.[1]?.toLowerCase() ?? 'strike']
  }

  private pick(strings: readonly number[]): Map<number, number | null> {
    return new Map([...this.hand!].filter(([string]) => strings.includes(string)))
  }

  private lastFrets(): Map<number, number | null> {
    const strike = this.into.findLast((event) => event.kind === 'strike')
    if (strike === undefined) throw new Error('nothing was struck before')
    return new Map(strike.notes.map((note) => [note.string, note.fret]))
  }

  private what(words: string): Map<number, number | null> {
    if (/^the same again$/i.test(words)) return this.lastFrets()
    const caught = words.match(new RegExp(`^only strings? (${LIST})$`, 'i'))
    if (caught !== null) return this.pick(list(caught[1]!))
    const move = words.match(/^The whole shape (\w+) frets? (up|down)$/i)
    if (move !== null) {
      this.hand = moved(this.lastFrets(), toNumber(move[1]!) * (move[2] === 'up' ? 1 : -1))
      return this.hand
    }
    if (/^straight back$/i.test(words)) {
      this.hand = new Map(this.shapes.get(this.lastShape))
      return this.hand
    }
    const add = words.match(/^add (.*)$/i)
    if (add !== null) return presses(add[1]!, this.lastFrets())
    const match = words.match(
      new RegExp(
        `^(?:back to )?(?:only strings? (${LIST}) of )?(.+?)(?: moved (\\w+) frets? (up|down))?(?: with (.*))?$`,
        'i',
      ),
    )!
    const name = this.name(match[2]!) ?? this.name(match[2]!.charAt(0).toUpperCase() + match[2]!.slice(1))
    if (name === null) return presses(words.charAt(0).toLowerCase() + words.slice(1), new Map())
    this.lastShape = name
    let frets = new Map<number, number | null>(this.shapes.get(name))
    if (match[3] !== undefined) frets = moved(frets, toNumber(match[3]) * (match[4] === 'up' ? 1 : -1))
    this.hand = new Map(frets)
    if (match[1] !== undefined)
      for (const string of [...frets.keys()]) if (!list(match[1]).includes(string)) frets.delete(string)
    return match[5] === undefined ? frets : presses(match[5], frets)
  }

  private lastShape = ''
  /** What was told to be held, to be struck next. */
  private pending = new Map<number, number | null>()
  /** The shape in hand, all its strings. */
  private hand: Map<number, number | null> | null = null

  /** Directions, place, slide, marks and length, in the order in which they are said. */
  private how(words: string, verb = 'strike') {
    let rest = words.trim()
    const take = (pattern: string): RegExpMatchArray | null => {
      const match = rest.match(new RegExp(`^(?:${pattern})`))
      if (match !== null) rest = rest.slice(match[0].length).trim()
      return match
    }
    const normal = verb === 'pluck' || this.count.style === 'pluck' ? 'pluck' : 'down'
    let strokes: string[] = [normal]
    const regular = take(String.raw`(\w+) times, (down|up) first`)
    const times = regular === null ? take(String.raw`(?:(once|twice)|(\w+) times)(?=$|[ ,;])`) : null
    const turns = regular === null && times === null ? take('(?:down|up)(?:(?:, | and )(?:down|up))*(?=$|[ ,;])') : null
    if (regular !== null) {
      const other = regular[2] === 'down' ? 'up' : 'down'
      strokes = Array.from({ length: toNumber(regular[1]!) }, (_, i) => (i % 2 === 0 ? regular[2]! : other))
    } else if (times !== null) {
      const n = times[1] === 'once' ? 1 : times[1] === 'twice' ? 2 : toNumber(times[2]!)
      strokes = Array.from({ length: n }, () => normal)
    } else if (turns !== null) strokes = turns[0].split(/, | and /)
    const place = take(PLACE)?.[0]
    let slide: (string: number, fret: number) => number | null | undefined = () => undefined
    if (take('and slide up into place from just below') !== null) slide = () => null
    const by = take(String.raw`and slide in from (\w+) frets? (below|above)`)
    if (by !== null) slide = (_, fret) => fret - toNumber(by[1]!) * (by[2] === 'below' ? 1 : -1)
    const each = take(
      String.raw`and slide in, (string \d+ from (?:fret \d+|just below)(?:(?:, | and )string \d+ from (?:fret \d+|just below))*)`,
    )
    if (each !== null) {
      const from = new Map(
        [...each[1]!.matchAll(/string (\d+) from (?:fret (\d+)|just below)/g)].map((m) => [
          Number(m[1]),
          m[2] === undefined ? null : Number(m[2]),
        ]),
      )
      slide = (string) => (from.has(string) ? from.get(string) : undefined)
    }
    const marks: string[] = []
    const palmMuted = take(', palm-muted') !== null
    const rolled = take(', rolled string by string') !== null
    for (let found = true; found; ) {
      found = false
      for (const [words, mark] of [
        [', with an accent', 'accent'],
        [', softly', 'ghost'],
        [', short', 'short'],
        [', with vibrato', 'vibrato'],
        [', then slide away', 'slide-off'],
      ] as const) {
        if (take(words) !== null) {
          marks.push(mark)
          found = true
        }
      }
    }
    take('; nothing strikes (?:it|them)')
    if (take('; let it ring(?: through [^;]*| over the bar line)?') !== null) marks.push('ring')
    take('; (?:let it last|hold it(?= *$)|hold it through [^;]*|hold it over the bar line)')
    if (rest !== '') throw new Error(`left over: ${rest} (of ${words})`)
    return { place, strokes, slide, event: { marks: marks.sort(), palmMuted, rolled } }
  }
}

function rest(at: number): Decoded {
  return { at, kind: 'rest', stroke: null, notes: [], strings: null, marks: [], palmMuted: false, rolled: false }
}

function cutAt(text: string, at: RegExp): [string, string] {
  const index = text.search(at)
  return index < 0 ? [text, ''] : [text.slice(0, index), text.slice(index)]
}

function moved(frets: ReadonlyMap<number, number | null>, by: number): Map<number, number | null> {
  return new Map([...frets].map(([string, fret]) => [string, fret === null || fret === 0 ? fret : fret + by]))
}

/** Reads "finger 1 at fret 7 on string 3 and open string 1" onto the frets already there. */
function presses<T extends Map<number, number> | Map<number, number | null>>(words: string, onto: T): T {
  const frets = onto as Map<number, number | null>
  let rest = words
  const patterns: [RegExp, (match: RegExpMatchArray) => void][] = [
    [
      /^(?:finger \d|the thumb) across fret (\d+) from string (\d+) to string (\d+)/,
      (m) => {
        for (let string = Number(m[2]); string >= Number(m[3]); string--) frets.set(string, Number(m[1]))
      },
    ],
    [
      new RegExp(`^(?:(?:finger \\d|the thumb) )?(?:at |onto |to )?fret (\\d+) on strings? (${LIST})`),
      (m) => {
        for (const string of list(m[2]!)) frets.set(string, Number(m[1]))
      },
    ],
    [
      new RegExp(`^(?:to )?open strings? (${LIST})`),
      (m) => {
        for (const string of list(m[1]!)) frets.set(string, 0)
      },
    ],
    [
      new RegExp(`^dead strings? (${LIST})`),
      (m) => {
        for (const string of list(m[1]!)) frets.set(string, null)
      },
    ],
    [
      new RegExp(`^strings? (${LIST}) silent`),
      (m) => {
        for (const string of list(m[1]!)) frets.delete(string)
      },
    ],
  ]
  while (rest !== '') {
    let read = false
    for (const [pattern, apply] of patterns) {
      const match = rest.match(pattern)
      if (match === null) continue
      apply(match)
      rest = rest.slice(match[0].length).replace(/^(?:, | and )/, '')
      read = true
      break
    }
    if (!read) throw new Error(`no strings and frets in: ${rest}`)
  }
  return onto
}
