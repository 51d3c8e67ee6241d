import { execFileSync } from 'node:child_process'

/** A fault in a PDF's structure: the checkpoint of the Matterhorn Protocol 1.1 it comes nearest to, and where. */
export interface StructureFault {
  readonly checkpoint: string
  readonly where: string
}

/** What a check found, with counts that tests can hold. */
export interface StructureReport {
  readonly faults: readonly StructureFault[]
  readonly elements: readonly { readonly role: string; readonly parent: string | null; readonly alt: string | null }[]
  readonly links: number
  readonly pages: number
}

type Value = string | number | boolean | null | readonly Value[] | { readonly [key: string]: Value }
type Dictionary = { readonly [key: string]: Value }
type Objects = Record<string, { value?: Value; stream?: { dict: Dictionary; data?: string } }>

const ROLES = new Set(
  'Document Part Art Sect Div BlockQuote Caption TOC TOCI Index NonStruct Private P H H1 H2 H3 H4 H5 H6 L LI Lbl LBody Table TR TH TD THead TBody TFoot Span Quote Note Reference BibEntry Code Link Annot Figure Formula Form'.split(
    ' ',
  ),
)
const PARENTS: Readonly<Record<string, readonly string[]>> = {
  LI: ['L'],
  Lbl: ['LI', 'Note'],
  LBody: ['LI'],
  TR: ['Table', 'THead', 'TBody', 'TFoot'],
  TH: ['TR'],
  TD: ['TR'],
  TOCI: ['TOC'],
}

interface Element {
  readonly ref: string
  readonly role: string
  readonly parent: Element | null
  readonly dictionary: Dictionary
  readonly kids: Element[]
}

/**
 * Checks the parts of PDF/UA-1 that a machine can see in the object graph, as qpdf prints it: metadata, language, every content stream fully
 * marked, marks and elements pointing at each other, roles and their parents, headings that do not skip, figures told in words, tables regular,
 * links described, fonts embedded with a way back to Unicode, no glyph 0 shown. It is no substitute for a full validator.
 */
export function checkStructure(file: string): StructureReport {
  const printed = execFileSync('qpdf', ['--json=2', '--json-stream-data=inline', '--decode-level=generalized', file], {
    maxBuffer: 1 << 30,
  })
  const objects = (JSON.parse(printed.toString('utf8')) as { qpdf: [unknown, Objects] }).qpdf[1]
  const graph = openGraph(objects)
  const faults: StructureFault[] = []
  const fault = (checkpoint: string, where = ''): void => {
    faults.push({ checkpoint, where })
  }
  const catalogue = graph.dict(graph.dict(objects.trailer?.value ?? null)['/Root'] ?? null)
  checkCatalogue(catalogue, graph, fault)
  const tree = readTree(catalogue, graph)
  checkElements(tree, graph, fault)
  const pages = pagesOf(catalogue, graph)
  checkPages(pages, tree, graph, fault)
  return {
    faults,
    elements: tree.elements.map((element) => ({
      role: element.role,
      parent: element.parent?.role ?? null,
      alt: text(graph.get(element.dictionary['/Alt'] ?? null)),
    })),
    links: tree.annotations.size,
    pages: pages.length,
  }
}

interface Graph {
  get(value: Value): Value
  dict(value: Value): Dictionary
  list(value: Value): readonly Value[]
  stream(value: Value): string
}

function openGraph(objects: Objects): Graph {
  const get = (value: Value): Value => {
    if (typeof value !== 'string' || !/^\d+ \d+ R$/.test(value)) return value
    const found = objects[`obj:${value}`]
    return get(found?.value ?? found?.stream?.dict ?? null)
  }
  return {
    get,
    dict: (value) => {
      const found = get(value)
      return found !== null && typeof found === 'object' && !Array.isArray(found) ? (found as Dictionary) : {}
    },
    list: (value) => {
      const found = get(value)
      if (Array.isArray(found)) return found as readonly Value[]
      return found === null ? [] : [value]
    },
    stream: (value) =>
      typeof value === 'string'
        ? Buffer.from(objects[`obj:${value}`]?.stream?.data ?? '', 'base64').toString('latin1')
        : '',
  }
}

function text(value: Value): string | null {
  return typeof value === 'string' ? value.replace(/^u:/, '') : null
}

type Fault = (checkpoint: string, where?: string) => void

function checkCatalogue(catalogue: Dictionary, graph: Graph, fault: Fault): void {
  if (graph.dict(catalogue['/MarkInfo'] ?? null)['/Marked'] !== true) fault('06-001 not marked as tagged')
  if (text(graph.get(catalogue['/Lang'] ?? null)) === null) fault('11-006 no language')
  if (graph.dict(catalogue['/ViewerPreferences'] ?? null)['/DisplayDocTitle'] !== true) fault('07-002 title not shown')
  const metadata = Buffer.from(graph.stream(catalogue['/Metadata'] ?? null), 'latin1').toString('utf8')
  if (!/pdfuaid:part>1</.test(metadata)) fault('06-002 no PDF/UA identifier')
  if (!/<dc:title>/.test(metadata)) fault('06-003 no title in the metadata')
  if (/&(?!amp;|lt;|gt;|quot;|apos;|#)/.test(metadata)) fault('06 metadata is no XML', metadata.match(/&.{0,20}/)?.[0])
}

interface Tree {
  readonly elements: readonly Element[]
  /** Elements by "page reference, mark". */
  readonly marks: ReadonlyMap<string, Element>
  /** Elements by annotation, with the page their reference names. */
  readonly annotations: ReadonlyMap<string, { readonly element: Element; readonly page: string }>
  /** What the parent tree holds by number. */
  readonly numbers: ReadonlyMap<number, Value>
}

function readTree(catalogue: Dictionary, graph: Graph): Tree {
  const root = graph.dict(catalogue['/StructTreeRoot'] ?? null)
  const elements: Element[] = []
  const marks = new Map<string, Element>()
  const annotations = new Map<string, { element: Element; page: string }>()
  const walk = (ref: Value, parent: Element | null, inherited: string): void => {
    const dictionary = graph.dict(ref)
    const role = String(dictionary['/S'] ?? '').replace(/^\//, '')
    const element: Element = { ref: String(ref), role, parent, dictionary, kids: [] }
    elements.push(element)
    parent?.kids.push(element)
    const page = String(dictionary['/Pg'] ?? inherited)
    for (const kid of graph.list(dictionary['/K'] ?? null)) {
      const value = graph.get(kid)
      const inner = graph.dict(kid)
      if (typeof value === 'number') marks.set(`${page}#${value}`, element)
      else if (inner['/Type'] === '/MCR')
        marks.set(`${String(inner['/Pg'] ?? page)}#${String(inner['/MCID'])}`, element)
      else if (inner['/Type'] === '/OBJR') {
        annotations.set(String(inner['/Obj']), { element, page: String(inner['/Pg'] ?? page) })
      } else walk(kid, element, page)
    }
  }
  for (const kid of graph.list(root['/K'] ?? null)) walk(kid, null, '')
  const numbers = new Map<number, Value>()
  const readNumbers = (value: Value): void => {
    const node = graph.dict(value)
    const pairs = graph.list(node['/Nums'] ?? null)
    for (let i = 0; i + 1 < pairs.length; i += 2) numbers.set(Number(pairs[i]), pairs[i + 1] ?? null)
    for (const kid of graph.list(node['/Kids'] ?? null)) readNumbers(kid)
  }
  readNumbers(root['/ParentTree'] ?? null)
  return { elements, marks, annotations, numbers }
}

function attributes(element: Element, graph: Graph): readonly Dictionary[] {
  return graph.list(element.dictionary['/A'] ?? null).map((value) => graph.dict(value))
}

function checkElements(tree: Tree, graph: Graph, fault: Fault): void {
  if (tree.elements.length === 0) fault('01 no structure tree')
  let lastLevel = 0
  for (const element of tree.elements) {
    const { role, parent } = element
    if (!ROLES.has(role)) fault('02-001 role that no standard names', role)
    const level = Number(/^H([1-6])$/.exec(role)?.[1] ?? 0)
    if (level > lastLevel + 1) fault('14-003 heading level skipped', role)
    if (level > 0) lastLevel = level
    const allowed = PARENTS[role]
    if (allowed !== undefined && !allowed.includes(parent?.role ?? ''))
      fault('09 wrong parent', `${role} in ${parent?.role}`)
    if (role === 'Figure') {
      if ((text(graph.get(element.dictionary['/Alt'] ?? null)) ?? '') === '') fault('13-004 figure without words')
      if (!attributes(element, graph).some((each) => '/BBox' in each)) fault('13 figure without a box')
    }
    if (role === 'TH' && !attributes(element, graph).some((each) => '/Scope' in each))
      fault('15-003 header without scope')
    if (role === 'Table') {
      const widths = new Set(element.kids.filter((kid) => kid.role === 'TR').map((row) => row.kids.length))
      if (widths.size > 1) fault('15 irregular table', [...widths].join(', '))
    }
    if (role === 'Link' && ![...tree.annotations.values()].some((each) => each.element === element)) {
      fault('28-011 link without annotation')
    }
  }
}

function pagesOf(catalogue: Dictionary, graph: Graph): readonly { readonly ref: string; readonly page: Dictionary }[] {
  const pages: { ref: string; page: Dictionary }[] = []
  const walk = (ref: Value): void => {
    const node = graph.dict(ref)
    if (node['/Type'] === '/Page') pages.push({ ref: String(ref), page: node })
    else for (const kid of graph.list(node['/Kids'] ?? null)) walk(kid)
  }
  walk(catalogue['/Pages'] ?? null)
  return pages
}

function checkPages(
  pages: readonly { readonly ref: string; readonly page: Dictionary }[],
  tree: Tree,
  graph: Graph,
  fault: Fault,
): void {
  const used = new Set<string>()
  for (const { ref, page } of pages) {
    const parents = graph.list(tree.numbers.get(Number(page['/StructParents'])) ?? null)
    const contents = graph.list(page['/Contents'] ?? null).map((each) => graph.stream(each))
    checkContent(contents.join('\n'), {
      mark: (id) => {
        const key = `${ref}#${id}`
        const element = tree.marks.get(key)
        if (used.has(key)) fault('mark used twice', key)
        if (element === undefined) fault('01-005 mark without element', key)
        else if (parents[id] !== element.ref) fault('parent tree disagrees', key)
        used.add(key)
      },
      fault,
    })
    const annotations = graph.list(page['/Annots'] ?? null)
    if (annotations.length > 0 && page['/Tabs'] !== '/S') fault('28-008 tab order is not that of the structure')
    for (const annotation of annotations) checkLink(annotation, ref, { tree, graph, fault })
    checkFonts(page, graph, fault)
  }
  for (const key of tree.marks.keys()) if (!used.has(key)) fault('element points at a mark that is not drawn', key)
}

function checkLink(
  annotation: Value,
  page: string,
  { tree, graph, fault }: { readonly tree: Tree; readonly graph: Graph; readonly fault: Fault },
): void {
  const dictionary = graph.dict(annotation)
  if (dictionary['/Subtype'] !== '/Link') return
  const found = tree.annotations.get(String(annotation))
  if (found === undefined || found.element.role !== 'Link') {
    fault('28-011 annotation outside a Link')
    return
  }
  if (found.page !== page) fault('annotation counted to another page', `${found.page} is not ${page}`)
  if (tree.numbers.get(Number(dictionary['/StructParent'])) !== found.element.ref) fault('StructParent disagrees')
  if ((text(graph.get(dictionary['/Contents'] ?? null)) ?? '') === '') fault('28-012 link without description')
}

function checkFonts(page: Dictionary, graph: Graph, fault: Fault): void {
  const fonts = graph.dict(graph.dict(page['/Resources'] ?? null)['/Font'] ?? null)
  for (const value of Object.values(fonts)) {
    const font = graph.dict(value)
    const name = String(font['/BaseFont'])
    const descendant = graph.dict(graph.list(font['/DescendantFonts'] ?? null)[0] ?? null)
    const descriptor = graph.dict(descendant['/FontDescriptor'] ?? font['/FontDescriptor'] ?? null)
    if (!('/FontFile2' in descriptor || '/FontFile3' in descriptor)) fault('31-001 font not embedded', name)
    if (!('/ToUnicode' in font)) fault('31-027 font without Unicode', name)
  }
}

const TOKENS = /<<[\s\S]*?>>|\[[^\]]*\]|\((?:\\.|[^\\)])*\)|<[0-9A-Fa-f\s]*>|\/[^\s/[\]<>()]+|[^\s[\]<>()/]+/g
const PAINTS = /^(S|s|f|F|f\*|B|b|B\*|b\*|Do|sh|TJ|Tj|'|")$/

/** Walks the operators of a page: everything painted stands in an artifact or in a mark, never in both, and no glyph 0 is shown. */
function checkContent(
  content: string,
  { mark, fault }: { readonly mark: (id: number) => void; readonly fault: Fault },
): void {
  const open: { artifact: boolean; marked: boolean }[] = []
  let operands: string[] = []
  for (const [token] of content.matchAll(TOKENS)) {
    if (!/^[A-Za-z'"*]+\d?\*?$/.test(token) || /^(true|false|null)$/.test(token)) {
      operands.push(token)
      continue
    }
    if (token === 'BDC' || token === 'BMC') {
      const artifact = operands[0] === '/Artifact'
      const id = /\/MCID\s+(\d+)/.exec(operands[1] ?? '')?.[1]
      if (id !== undefined) {
        if (open.some((each) => each.artifact)) fault('01-004 content inside an artifact')
        mark(Number(id))
      }
      if (artifact && open.some((each) => each.marked)) fault('01-003 artifact inside content')
      open.push({ artifact, marked: id !== undefined })
    } else if (token === 'EMC') open.pop()
    else if (PAINTS.test(token)) {
      if (!open.some((each) => each.artifact || each.marked)) fault('01-005 unmarked content', token)
      if (/^T[Jj]$/.test(token) && showsNothing(operands.join(' '))) fault('31-030 glyph 0 shown')
    }
    operands = []
  }
}

function showsNothing(operands: string): boolean {
  const shown = [...operands.matchAll(/<([0-9A-Fa-f]*)>/g)].map(([, codes = '']) => codes)
  return shown.some((codes) => /^(?:.{4})*0000/.test(codes))
}
