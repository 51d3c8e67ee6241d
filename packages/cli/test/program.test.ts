import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { CODE_DOCS } from '@barwise/parser'
import { describe, expect, test } from 'vitest'
import { runProgram } from '../src/program.ts'
import { SHORT_LESSON, SOUND_LESSON, TIGHT_LESSON, testWorld } from './support/test-world.ts'

describe('barwise alone', () => {
  test('says what it does and the next step', async () => {
    const world = testWorld()
    expect(await runProgram([], world)).toBe(0)
    expect(world.printed.out).toContain('barwise new my-lesson.md')
    expect(world.printed.err).toBe('')
  })

  test('answers wrong usage with code 2 and what would be right', async () => {
    const wrong: readonly (readonly [readonly string[], RegExp])[] = [
      [['biuld'], /Did you mean build\?/],
      [['build'], /missing required argument 'lesson'/],
      [['check', 'a.md', '--stricct'], /Did you mean --strict\?/],
      [['check', 'a.md', '--format', 'xml'], /Allowed choices are text, lines, json/],
      [['build', 'a.md', '--to', 'epub'], /There is no "epub"\. Choose from pdf, html, json/],
      [['build', 'a.md', '--to', ','], /Choose from pdf, html, json/],
      [
        ['build', 'a.md', '--edition', 'parent'],
        /There is no "parent"\. Choose from pupil, teacher, left, large, mono\./,
      ],
      [['build', 'a.md', '--edition', 'teacher,big'], /There is no "big"\./],
      [['build', 'a.md', '--edition', ','], /Choose from pupil, teacher, left, large, mono\./],
      [['build', 'a.md', '--paper', 'a3'], /Allowed choices are a4, letter/],
      [['check', 'nowhere.md'], /there is no file nowhere\.md\n {2}help: check the name/],
      [['check', '.'], /\. is a folder\n {2}help: name a lesson or a book/],
      [['explain', 'no-such-code'], /there is no finding called no-such-code/],
    ]
    for (const [args, message] of wrong) {
      const world = testWorld()
      expect(await runProgram(args, world), args.join(' ')).toBe(2)
      expect(world.printed.err, args.join(' ')).toMatch(message)
    }
  })

  test('gives help and version with code 0, for every command', async () => {
    for (const args of [['--help'], ['help'], ['build', '--help'], ['help', 'check'], ['--version']]) {
      const world = testWorld()
      expect(await runProgram(args, world), args.join(' ')).toBe(0)
      expect(world.printed.out, args.join(' ')).not.toBe('')
    }
  })

  test('answers a fault of its own with code 3 and where to report it', async () => {
    const world = testWorld()
    const broken = { ...world, out: { ...world.out, write: () => expect.fail('a fault inside') } }
    expect(await runProgram([], broken)).toBe(3)
    expect(world.printed.err).toContain('Barwise itself failed')
    expect(world.printed.err).toContain('Please report this')
  })
})

describe('barwise check', () => {
  test('prints each finding with its excerpt, carets and help, then the summary', async () => {
    const world = testWorld()
    world.file('tag.md', SHORT_LESSON)
    expect(await runProgram(['check', 'tag.md'], world)).toBe(1)
    const [excerpt, summary] = world.printed.out.split('\n\n')
    expect(excerpt).toMatch(/^error\[wrong-slot-count\] beat 2 has 1 sign, an eighth grid needs 2\n {2}tag\.md:16:6\n/)
    expect(excerpt).toContain('   16 |   2: Em\n      |      ^^\n  help: ')
    expect(summary).toBe('1 error in 1 lesson\n')
  })

  test('finds the same places in a file with Windows line endings', async () => {
    const world = testWorld()
    world.file('tag.md', SHORT_LESSON.replaceAll('\n', '\r\n'))
    expect(await runProgram(['check', 'tag.md'], world)).toBe(1)
    expect(world.printed.out).toContain('tag.md:16:6\n   16 |   2: Em\n      |      ^^\n')
  })

  test('is fine with a sound lesson, whatever the flags', async () => {
    for (const flags of [[], ['--strict'], ['--notes'], ['--format', 'lines'], ['--format', 'json']]) {
      const world = testWorld()
      world.file('tag.md', SOUND_LESSON)
      expect(await runProgram(['check', 'tag.md', ...flags], world), flags.join(' ')).toBe(0)
    }
  })

  test('keeps code 1 for a lesson with an error, whatever the flags', async () => {
    for (const flags of [[], ['--strict'], ['--notes'], ['--format', 'lines'], ['--format', 'json']]) {
      const world = testWorld()
      world.file('tag.md', SHORT_LESSON)
      expect(await runProgram(['check', 'tag.md', ...flags], world), flags.join(' ')).toBe(1)
    }
  })

  test('prints one line a finding with --format lines, and one array with --format json', async () => {
    const world = testWorld()
    world.file('a.md', SHORT_LESSON)
    world.file('b.md', SHORT_LESSON)
    await runProgram(['check', 'a.md', 'b.md', '--format', 'lines'], world)
    expect(world.printed.out.split('\n').slice(0, 2)).toEqual([
      'a.md:16:6: error[wrong-slot-count] beat 2 has 1 sign, an eighth grid needs 2',
      'b.md:16:6: error[wrong-slot-count] beat 2 has 1 sign, an eighth grid needs 2',
    ])
    const json = testWorld()
    json.file('a.md', SHORT_LESSON)
    await runProgram(['check', 'a.md', '--format', 'json'], json)
    const records = JSON.parse(json.printed.out)
    expect(records[0]).toMatchObject({ code: 'wrong-slot-count', severity: 'error', file: 'a.md', line: 16, column: 6 })
    expect(Object.keys(records[0])).toEqual([
      'code',
      'severity',
      'message',
      'help',
      'file',
      'line',
      'column',
      'endLine',
      'endColumn',
    ])
  })

  test('shows a progress line on a terminal only, and leaves nothing of it behind', async () => {
    const terminal = testWorld({}, true)
    terminal.file('tag.md', SOUND_LESSON)
    await runProgram(['check', 'tag.md'], terminal)
    expect(terminal.printed.err).toContain('Checking tag.md')
    expect(terminal.printed.err.endsWith('\r\u001b[2K')).toBe(true)
    const pipe = testWorld()
    pipe.file('tag.md', SOUND_LESSON)
    await runProgram(['check', 'tag.md'], pipe)
    expect(pipe.printed.err).toBe('')
  })
})

describe('barwise build', () => {
  test('makes the PDF, the booklet and the JSON, named after the lesson, and says so', async () => {
    const world = testWorld()
    world.file('tag.md', SOUND_LESSON)
    expect(await runProgram(['build', 'tag.md', '--to', 'pdf,html,json', '--out', 'made'], world)).toBe(0)
    expect(world.printed.out.trim().split('\n')).toEqual([
      'Wrote made/tag.json',
      expect.stringMatching(/^Wrote made\/tag\.pdf \(\d+ pages?\)$/),
      'Wrote made/tag-web/index.html (the web booklet)',
    ])
    expect(readFileSync(join(world.folder, 'made/tag.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
    expect(JSON.parse(readFileSync(join(world.folder, 'made/tag.json'), 'utf8')).title).toBe('Tag')
  })

  test('makes MusicXML and MIDI of each part, named after the lesson where it has one', async () => {
    const world = testWorld()
    world.file('tag.md', SOUND_LESSON)
    world.file('two.md', `${SOUND_LESSON}\n:::part{#close time=2/4 grid=4}\nbar 1\n  1: 0@6\n  2: 0@6\n:::\n`)
    expect(await runProgram(['build', 'tag.md', 'two.md', '--to', 'midi,musicxml', '--out', 'made'], world)).toBe(0)
    const first = /#([\w-]+)/.exec(SOUND_LESSON)![1]
    expect(readdirSync(join(world.folder, 'made')).toSorted()).toEqual(
      [
        'tag.mid',
        'tag.musicxml',
        `two-${first}.mid`,
        `two-${first}.musicxml`,
        'two-close.mid',
        'two-close.musicxml',
      ].toSorted(),
    )
    expect(world.printed.out).toContain('Wrote made/two-close.musicxml')
    expect(readFileSync(join(world.folder, 'made/tag.mid')).subarray(0, 4).toString()).toBe('MThd')
    expect(readFileSync(join(world.folder, 'made/tag.musicxml'), 'utf8')).toContain('<score-partwise version="4.0">')
  })

  test('says so when a lesson has no part to make a file of', async () => {
    const world = testWorld()
    world.file('words.md', '---\ntitle: Words\n---\n\nOnly words.\n')
    expect(await runProgram(['build', 'words.md', '--to', 'midi'], world)).toBe(0)
    expect(world.printed.out).toBe('')
    expect(world.printed.err).toBe('Nothing to write: words.md has no part to make a file of.\n')
  })

  test('names the files of an edition for its kinds, in one order, and gives the pupil’s no suffix', async () => {
    const cases: readonly (readonly [string, readonly string[]])[] = [
      ['pupil', ['tag-web', 'tag.pdf', 'tag.txt']],
      ['teacher', ['tag-teacher-web', 'tag-teacher.pdf', 'tag-teacher.txt']],
      ['pupil,teacher', ['tag-teacher-web', 'tag-teacher.pdf', 'tag-teacher.txt']],
      ['mono,teacher,mono', ['tag-teacher-mono-web', 'tag-teacher-mono.pdf', 'tag-teacher.txt']],
      ['Large, Teacher', ['tag-teacher-large-web', 'tag-teacher-large.pdf', 'tag-teacher.txt']],
      ['mono', ['tag-mono-web', 'tag-mono.pdf', 'tag.txt']],
      ['left', ['tag-left-web', 'tag-left.pdf', 'tag.txt']],
      ['large,left', ['tag-left-large-web', 'tag-left-large.pdf', 'tag.txt']],
    ]
    for (const [edition, names] of cases) {
      const world = testWorld()
      world.file('tag.md', SOUND_LESSON)
      const args = ['build', 'tag.md', '--to', 'pdf,html,text', '--out', 'made', '--edition', edition]
      expect(await runProgram(args, world), edition).toBe(0)
      expect(readdirSync(join(world.folder, 'made')).toSorted(), edition).toEqual(names)
    }
  })

  test('keeps every edition beside the others, and prints findings in the teacher’s only', async () => {
    const world = testWorld()
    world.file('tag.md', `${TIGHT_LESSON}\n:::teacher\nSlow down first.\n:::\n`)
    expect(await runProgram(['build', 'tag.md', '--to', 'html,text'], world)).toBe(0)
    const pupil = readFileSync(join(world.folder, 'tag.txt'), 'utf8')
    expect(await runProgram(['build', 'tag.md', '--to', 'html,text', '--edition', 'teacher'], world)).toBe(0)
    expect(readFileSync(join(world.folder, 'tag.txt'), 'utf8')).toBe(pupil)
    const teacher = readFileSync(join(world.folder, 'tag-teacher.txt'), 'utf8')
    const page = readFileSync(join(world.folder, 'tag-teacher-web/index.html'), 'utf8')
    for (const text of [teacher, page]) {
      expect(text).toContain('Teacher’s edition')
      expect(text).toContain('Slow down first.')
      expect(text).toContain('change-tight')
    }
    for (const text of [pupil, readFileSync(join(world.folder, 'tag-web/index.html'), 'utf8')]) {
      expect(text).not.toMatch(/Teacher’s|Slow down|change-tight|What the check noted/)
    }
  })

  test('prints no finding that the writer has silenced', async () => {
    const world = testWorld()
    world.file('tag.md', TIGHT_LESSON.replace('tempo:', 'accept: change-tight\ntempo:'))
    await runProgram(['build', 'tag.md', '--to', 'text', '--edition', 'teacher'], world)
    const text = readFileSync(join(world.folder, 'tag-teacher.txt'), 'utf8')
    expect(text).not.toContain('(change-tight)')
    expect(text).toContain('What the check noted\n--------------------\nNothing in this lesson.\n')
  })

  test('gives the same bytes twice, and dates the PDF by SOURCE_DATE_EPOCH', async () => {
    const build = async (env: Record<string, string>): Promise<Buffer> => {
      const world = testWorld(env)
      world.file('tag.md', SOUND_LESSON)
      expect(await runProgram(['build', 'tag.md', '--to', 'pdf'], world)).toBe(0)
      return readFileSync(join(world.folder, 'tag.pdf'))
    }
    const plain = await build({})
    expect((await build({})).equals(plain)).toBe(true)
    const dated = await build({ SOURCE_DATE_EPOCH: '1700000000' })
    expect(dated.equals(plain)).toBe(false)
    expect((await build({ SOURCE_DATE_EPOCH: '1700000000' })).equals(dated)).toBe(true)
    const wrong = testWorld({ SOURCE_DATE_EPOCH: 'yesterday' })
    wrong.file('tag.md', SOUND_LESSON)
    expect(await runProgram(['build', 'tag.md'], wrong)).toBe(2)
  })

  test('does not build a lesson with reading errors and leaves what was built before', async () => {
    const world = testWorld()
    world.file('tag.md', SOUND_LESSON)
    await runProgram(['build', 'tag.md'], world)
    const before = readFileSync(join(world.folder, 'tag.pdf'))
    world.file('tag.md', SHORT_LESSON)
    expect(await runProgram(['build', 'tag.md'], world)).toBe(1)
    expect(world.printed.err).toContain('error[wrong-slot-count]')
    expect(world.printed.err).toContain('Not built: tag.md, because 1 lesson cannot be read as written')
    expect(readFileSync(join(world.folder, 'tag.pdf')).equals(before)).toBe(true)
  })

  test('names a target that cannot be replaced, with code 2, and leaves nothing half made', async () => {
    const world = testWorld()
    world.file('tag.md', SOUND_LESSON)
    mkdirSync(join(world.folder, 'tag.pdf'))
    expect(await runProgram(['build', 'tag.md', '--to', 'pdf'], world)).toBe(2)
    expect(world.printed.err).toMatch(/tag\.pdf is a folder, not a file/)
    expect(readdirSync(world.folder).sort()).toEqual(['tag.md', 'tag.pdf'])
  })

  test('takes the page of a lesson that left the book out of the booklet, and says so', async () => {
    const world = testWorld()
    const book = (lessons: string): string => `---\ntitle: Small\n---\n\n# Lessons\n\n${lessons}`
    world.file('tag.md', SOUND_LESSON)
    world.file('second.md', SOUND_LESSON.replaceAll('Tag', 'Second'))
    world.file('book.md', book('- [Tag](tag.md)\n- [Second](second.md)\n'))
    await runProgram(['build', 'book.md', '--to', 'html'], world)
    world.file('book-web/notes.html', 'notes of my own')
    const pages = (): readonly string[] =>
      readdirSync(join(world.folder, 'book-web')).filter((name) => /html/.test(name))
    expect(pages().toSorted()).toEqual(['index.html', 'notes.html', 'second.html', 'tag.html'])
    world.file('book.md', book('- [Tag](tag.md)\n'))
    expect(await runProgram(['build', 'book.md', '--to', 'html'], world)).toBe(0)
    expect(pages().toSorted()).toEqual(['index.html', 'notes.html', 'tag.html'])
    expect(world.printed.out).toContain('Removed book-web/second.html (no longer part of the booklet)\n')
  })

  test('refuses two lessons that would write the same files', async () => {
    const world = testWorld()
    mkdirSync(join(world.folder, 'a'))
    mkdirSync(join(world.folder, 'b'))
    world.file('a/tag.md', SOUND_LESSON)
    world.file('b/tag.md', SOUND_LESSON)
    expect(await runProgram(['build', 'a/tag.md', 'b/tag.md', '--out', 'made'], world)).toBe(2)
    expect(world.printed.err).toContain('a/tag.md and b/tag.md would both write made/tag.pdf')
    expect(existsSync(join(world.folder, 'made'))).toBe(false)
  })

  test('refuses a book and its lesson, or two lessons of one name, that would write the same file', async () => {
    const world = testWorld()
    mkdirSync(join(world.folder, 'a'))
    world.file('tag.md', SOUND_LESSON)
    world.file('a/tag.md', SOUND_LESSON.replace('Tag', 'Other'))
    world.file('book.md', '---\ntitle: Book\n---\n\n# One\n\n- [Tag](tag.md)\n')
    expect(await runProgram(['build', 'book.md', 'tag.md', '--to', 'text'], world)).toBe(2)
    expect(world.printed.err).toContain('book.md and tag.md would both write tag.txt')
    world.file('book.md', '---\ntitle: Book\n---\n\n# One\n\n- [Tag](tag.md)\n- [Other](a/tag.md)\n')
    expect(await runProgram(['build', 'book.md', '--to', 'text'], world)).toBe(2)
    expect(world.printed.err).toContain(
      'book.md would write tag.txt twice\n  help: give one of its lessons another file name',
    )
    expect(await runProgram(['build', 'book.md', '--to', 'html'], world)).toBe(0)
    expect(readdirSync(world.folder).toSorted()).toEqual(['a', 'book-web', 'book.md', 'tag.md'])
  })

  test('takes the paper as it is usually written', async () => {
    const world = testWorld()
    world.file('tag.md', SOUND_LESSON)
    expect(await runProgram(['build', 'tag.md', '--to', 'pdf', '--paper', 'A4'], world)).toBe(0)
  })

  test('takes a lesson named twice once', async () => {
    const world = testWorld()
    world.file('tag.md', SOUND_LESSON)
    expect(await runProgram(['build', 'tag.md', 'tag.md', '--to', 'text'], world)).toBe(0)
    expect(world.printed.out).toBe('Wrote tag.txt\n')
  })

  test('never writes over a file it was made from, also where a link leads there', async () => {
    const world = testWorld()
    const [shapes] = /:::shapes[\s\S]*?\n:::\n/.exec(SOUND_LESSON) ?? []
    const lesson = SOUND_LESSON.replace(shapes ?? '', '')
    world.file('shapes.txt', shapes ?? '')
    world.file('shapes.md', lesson)
    world.file('book.md', '---\ntitle: Book\nshapes: shapes.txt\n---\n\n# One\n\n- [Tag](shapes.md)\n')
    symlinkSync(world.folder, join(world.folder, 'linked'))
    for (const out of ['.', 'linked']) {
      expect(await runProgram(['build', 'book.md', '--to', 'text', '--out', out], world)).toBe(2)
      expect(readFileSync(join(world.folder, 'shapes.txt'), 'utf8')).toBe(shapes)
    }
    expect(world.printed.err).toContain(
      'book.md is made from shapes.txt, which the build would write over\n  help: choose another folder with `--out`',
    )
    expect(await runProgram(['build', 'book.md', '--to', 'text', '--out', 'made'], world)).toBe(0)
    expect(world.printed.out).toBe('Wrote made/shapes.txt\n')
  })
})

describe('barwise new', () => {
  test('writes a lesson that builds without any finding', async () => {
    const world = testWorld()
    expect(await runProgram(['new', 'rainy-day.md'], world)).toBe(0)
    expect(world.printed.out).toContain('barwise build rainy-day.md')
    expect(world.printed.out.match(/needs a licence from whoever holds the rights/g)).toHaveLength(1)
    expect(readFileSync(join(world.folder, 'rainy-day.md'), 'utf8')).toContain('title: "Rainy day"')
    const check = { ...world, printed: { out: '', err: '' } }
    expect(await runProgram(['check', 'rainy-day.md', '--strict', '--notes'], check)).toBe(0)
    expect(world.printed.out).toContain('no findings in 1 lesson')
    expect(await runProgram(['build', 'rainy-day.md'], world)).toBe(0)
  })

  test('takes any title, and never overwrites', async () => {
    const world = testWorld()
    expect(await runProgram(['new', 'a', '--title', 'He said: "go" #1'], world)).toBe(0)
    expect(await runProgram(['check', 'a.md'], world)).toBe(0)
    const text = readFileSync(join(world.folder, 'a.md'), 'utf8')
    expect(await runProgram(['new', 'a.md'], world)).toBe(2)
    expect(world.printed.err).toContain('a.md is there already')
    expect(readFileSync(join(world.folder, 'a.md'), 'utf8')).toBe(text)
  })
})

describe('barwise explain', () => {
  test('explains every code with a wrong and a right example', async () => {
    for (const code of Object.keys(CODE_DOCS)) {
      const world = testWorld()
      expect(await runProgram(['explain', code], world), code).toBe(0)
      expect(world.printed.out, code).toMatch(/\n\nWrong:\n[\s\S]+\n\nRight:\n/)
    }
  })

  test('takes a code as it is printed, lists all without one, and suggests for a near one', async () => {
    const printed = testWorld()
    expect(await runProgram(['explain', 'error[wrong-slot-count]'], printed)).toBe(0)
    const all = testWorld()
    expect(await runProgram(['explain'], all)).toBe(0)
    const listed = [...all.printed.out.matchAll(/(?<= {2})[a-z-]+(?=[*+]? {2}|[*+]?\n)/g)].map(([code]) => code)
    expect(listed.sort()).toEqual(Object.keys(CODE_DOCS).sort())
    const near = testWorld()
    expect(await runProgram(['explain', 'slot-count'], near)).toBe(2)
    expect(near.printed.err).toContain('try `wrong-slot-count`')
    expect(existsSync(join(near.folder, 'nothing'))).toBe(false)
  })
})
