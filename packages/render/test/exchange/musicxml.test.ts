import { checkLesson, type Lesson, readLesson } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { partMusicXml } from '../../src/exchange/musicxml.ts'

function lessonOf(matter: string, part: string): Lesson {
  const source = { path: 'tag.md', text: `---\ntitle: Tag\n${matter}\n---\n\n${part}\n` }
  return checkLesson(readLesson(source).lesson, [source]).lesson
}

/** The file of the first part in one line, without the spaces between elements. */
function xmlOf(matter: string, part: string): string {
  const lesson = lessonOf(matter, part)
  return partMusicXml(lesson, lesson.parts[0]!).replace(/>\s+</g, '><')
}

/** What stands inside each element of a name, in order. */
function each(xml: string, name: string): readonly string[] {
  return [...xml.matchAll(new RegExp(`<${name}(?: [^>]*)?>(.*?)</${name}>`, 'g'))].map((match) => match[1]!)
}

const block = (lines: string, attributes = 'grid=4 time=2/4') =>
  `:::part{#tag title="Tag" ${attributes}}\n${lines}\n:::`

describe('a part as MusicXML', () => {
  // By hand: fret 3 of string 5 sounds C3, and a clef with an 8 below reads it so; a quarter is 3,360 divisions.
  it('writes a note once for the staff and once for the tablature', () => {
    const xml = xmlOf('key: A minor', block('bar 1\n  1: 3@5(3)\n  2: .'))
    expect(each(xml, 'note')).toEqual([
      '<pitch><step>C</step><octave>3</octave></pitch><duration>3360</duration><voice>1</voice><type>quarter</type><staff>1</staff>' +
        '<notations><technical><down-bow/></technical></notations>',
      '<rest/><duration>3360</duration><voice>1</voice><type>quarter</type><staff>1</staff>',
      '<pitch><step>C</step><octave>3</octave></pitch><duration>3360</duration><voice>5</voice><type>quarter</type><stem>none</stem><staff>2</staff>' +
        '<notations><technical><string>5</string><fret>3</fret><fingering>3</fingering></technical></notations>',
      '<rest/><duration>3360</duration><voice>5</voice><type>quarter</type><staff>2</staff>',
    ])
    expect(each(xml, 'backup')).toEqual(['<duration>6720</duration>'])
  })

  it('says the tablature is the same music shown otherwise, tuned string by string from the lowest line', () => {
    const xml = xmlOf('tuning: D2 A2 D3 G3 A3 D4', block('bar 1\n  1: 0@6\n  2: -'))
    const [details] = each(xml, 'staff-details')
    expect(details).toContain('<staff-type>alternate</staff-type><staff-lines>6</staff-lines>')
    expect(each(details!, 'tuning-step').join(' ')).toBe('D A D G A D')
    expect(each(details!, 'tuning-octave').join(' ')).toBe('2 2 3 3 3 4')
    expect(details).not.toContain('capo')
    expect(xml).not.toContain('<transpose>')
  })

  it.each([
    // Key and capo, then letters and semitones up to what sounds: E to G, E to F, C to D flat, D to E, G to G.
    ['E minor', 3, 2],
    ['E minor', 1, 1],
    ['C major', 1, 1],
    ['D major', 2, 1],
    ['G major', 12, 7],
  ])('writes %s with a capo at %i as fingered, and transposes it', (key, capo, diatonic) => {
    const xml = xmlOf(`key: ${key}\ncapo: ${capo}`, block('bar 1\n  1: 0@6\n  2: -'))
    expect(each(xml, 'transpose')).toEqual([`<diatonic>${diatonic}</diatonic><chromatic>${capo}</chromatic>`])
    expect(each(xml, 'capo')).toEqual([`${capo}`])
    // The lowest string is E, as the hand sees it.
    expect(each(xml, 'pitch')[0]).toBe('<step>E</step><octave>2</octave>')
  })

  it('gives a bass its clef and four lines, and a ukulele its own octave', () => {
    const bass = xmlOf('instrument: bass', block('bar 1\n  1: 0@4\n  2: -'))
    expect(bass).toContain('<sign>F</sign><line>4</line><clef-octave-change>-1</clef-octave-change>')
    expect(bass).toContain('<staff-lines>4</staff-lines>')
    expect(each(bass, 'pitch')[0]).toBe('<step>E</step><octave>1</octave>')
    expect(each(bass, 'midi-program')).toEqual(['34'])
    const ukulele = xmlOf('instrument: ukulele', block('bar 1\n  1: 0@3\n  2: -'))
    expect(ukulele).toContain('<sign>G</sign><line>2</line></clef>')
    expect(each(ukulele, 'pitch')[0]).toBe('<step>C</step><octave>4</octave>')
  })

  it('sets a scratch as crosses without a pitch, on every string it is shown on in the tablature', () => {
    const xml = xmlOf('', block('bar 1\n  1: x@5,6\n  2: .'))
    const crosses = each(xml, 'note').filter((note) => note.includes('<notehead>x</notehead>'))
    expect(crosses).toHaveLength(5)
    // The three middle lines of the staff, as the clef reads them.
    expect(crosses.slice(0, 3).map((note) => each(note, 'unpitched')[0])).toEqual([
      '<display-step>G</display-step><display-octave>3</display-octave>',
      '<display-step>B</display-step><display-octave>3</display-octave>',
      '<display-step>D</display-step><display-octave>4</display-octave>',
    ])
    expect(crosses.slice(3).map((note) => each(note, 'string')[0])).toEqual(['6', '5'])
  })

  it('hammers, pulls and slides from one note to the other of its string', () => {
    const xml = xmlOf(
      '',
      block('bar 1\n  1: 0@5 h:2@5\n  2: p:0@5 2@5\nbar 2\n  1: s:4@5 ds:7@4\n  2: - .', 'grid=8 time=2/4'),
    )
    const tab = each(xml, 'note').filter((note) => note.includes('<staff>2</staff>'))
    const moves = tab.map((note) =>
      [...note.matchAll(/<(hammer-on|pull-off|slide|scoop)(?: type="(\w+)" number="(\d+)")?/g)]
        .map(([, name, type, number]) => [name, type, number].filter(Boolean).join(' '))
        .sort(),
    )
    expect(moves).toEqual([
      ['hammer-on start 1'],
      ['hammer-on stop 1', 'pull-off start 1'],
      ['pull-off stop 1'],
      // Over the bar line, where the slide of the notes is still open in the file.
      ['slide start 2'],
      ['slide stop 2'],
      // From nowhere in particular: no other end.
      ['scoop'],
      [],
    ])
  })

  it('ties a chord into a later ending from before the first', () => {
    const xml = xmlOf(
      '',
      block(
        'bar 1\n  1: 0@6\n  2: 1@6\nbar 2\n  1: -\n  2: 3@6\nbar 3\n  1: -\n  2: 5@6\nrepeat 1-2\nending 1 bars 2-2\nending 2 bars 3-3',
      ),
    )
    const ties = each(xml, 'note')
      .filter((note) => note.includes('<staff>2</staff>'))
      .map((note) =>
        [...note.matchAll(/<(tie|tied) type="(\w+)"/g)].map(([, name, type]) => `${name} ${type}`).join(', '),
      )
    expect(ties).toEqual([
      '',
      'tie start, tied start',
      'tie stop, tied stop',
      '',
      // Source: MusicXML 4.0, tied: a tie out of a repeated section has both its ends on its note.
      'tie stop, tied start, tied stop',
      '',
    ])
    expect([...xml.matchAll(/<(?:ending|repeat) [^>]*>/g)].map(([text]) => text)).toEqual([
      '<repeat direction="forward"/>',
      '<ending number="1" type="start"/>',
      '<ending number="1" type="stop"/>',
      '<repeat direction="backward"/>',
      '<ending number="2" type="start"/>',
      '<ending number="2" type="discontinue"/>',
    ])
  })

  it('says how often a repeat without endings is played, where it is more than twice', () => {
    const twice = xmlOf('', block('bar 1\n  1: 0@6\n  2: -\nrepeat 1-1'))
    expect(twice).toContain('<repeat direction="backward"/>')
    const thrice = xmlOf('', block('bar 1\n  1: 0@6\n  2: -\nrepeat 1-1 times 3'))
    expect(thrice).toContain('<repeat direction="backward" times="3"/>')
  })

  it('lets the last written piece of a ringing note ring', () => {
    const xml = xmlOf('', block('bar 1\n  1: 0@6\n  2: 0@1_\nbar 2\n  1: -\n  2: 0@2', 'grid=4 time=2/4'))
    const first = each(xml, 'note').filter((note) => note.includes('<string>1</string>'))
    expect(first.map((note) => note.includes('let-ring'))).toEqual([false, true])
  })

  it('tells palm muting on each note, and shows it with dashes over a run', () => {
    const xml = xmlOf('', block('bar 1\n  1: m:0@6 m:0@6\n  2: 0@6 m:0@6', 'grid=8 time=2/4'))
    expect(each(xml, 'mute')).toHaveLength(6)
    expect([...xml.matchAll(/P\.M\.|<dashes type="\w+"/g)].map(([text]) => text)).toEqual([
      'P.M.',
      '<dashes type="start"',
      '<dashes type="stop"',
      'P.M.',
    ])
  })

  it('prints tempo and feel where they are set, and plays what it does not print', () => {
    const lines = 'bar 1\n  1: 0@6\n  2: -\nfrom 2 tempo 80 feel swing 8\nbar 2\n  1: 0@6\n  2: -'
    const xml = xmlOf('', block(lines))
    expect(each(xml, 'metronome')).toEqual(['<beat-unit>quarter</beat-unit><per-minute>80</per-minute>'])
    expect(xml.match(/<sound tempo="\d+"/g)).toHaveLength(2)
    expect(each(xml, 'swing')).toEqual(['<first>2</first><second>1</second><swing-type>eighth</swing-type>'])
  })

  it('counts quarters for playing and dotted beats for the eye', () => {
    const xml = xmlOf('tempo: 50', block('bar 1\n  1: 0@6 - -\n  2: - - -', 'grid=8 time=6/8 count=2'))
    expect(each(xml, 'metronome')).toEqual([
      '<beat-unit>quarter</beat-unit><beat-unit-dot/><per-minute>50</per-minute>',
    ])
    expect(xml).toContain('<sound tempo="75"/>')
  })

  it('names sections and says the remarks of the teacher at their beat', () => {
    const xml = xmlOf('', block('section Chorus\nbar 1\n  1: 0@6\n  2: -\n  say 2: let go & breathe'))
    expect(each(xml, 'rehearsal')).toEqual(['Chorus'])
    expect(xml).toContain('>let go &#x26; breathe</words></direction-type><offset>3360</offset><staff>2</staff>')
  })

  it('says that there is no chord, and keeps a symbol nobody can read as words', () => {
    const xml = xmlOf('', block('bar 1 chords . Hmm\n  1: 0@6\n  2: 0@6'))
    expect(each(xml, 'harmony')).toEqual([
      '<root><root-step text="">C</root-step></root><kind text="N.C.">none</kind><staff>1</staff>',
      '<root><root-step text="">C</root-step></root><kind text="Hmm">other</kind><staff>1</staff>',
    ])
  })

  it('spells root, bass and what a symbol adds', () => {
    const xml = xmlOf('', block('bar 1 chords Bbm7/Ab F#7b9\n  1: 0@6\n  2: 0@6'))
    expect(each(xml, 'harmony')).toEqual([
      '<root><root-step>B</root-step><root-alter>-1</root-alter></root><kind text="m7">minor-seventh</kind>' +
        '<bass><bass-step>A</bass-step><bass-alter>-1</bass-alter></bass><staff>1</staff>',
      '<root><root-step>F</root-step><root-alter>1</root-alter></root><kind text="7♭9">dominant</kind>' +
        '<degree print-object="no"><degree-value>9</degree-value><degree-alter>-1</degree-alter><degree-type>add</degree-type></degree>' +
        '<staff>1</staff>',
    ])
  })

  it('writes a symbol that comes while a chord is held at its own time', () => {
    const xml = xmlOf('', block('bar 1 chords Em A\n  1: 0@6\n  2: -'))
    expect(each(xml, 'offset')).toEqual(['3360'])
  })

  it('gives the same file for the same lesson', () => {
    const part = block('bar 1\n  1: 0@6\n  2: -')
    expect(xmlOf('', part)).toBe(xmlOf('', part))
  })
})
