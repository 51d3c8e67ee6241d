export { type Bounds, boundsOf, joinBounds } from './drawing/bounds.ts'
export { APART, type Collision, collisionsIn, describeCollision } from './drawing/collisions.ts'
export type { Drawing, DrawnGroup, DrawnItem, GlyphRun, Ink, Path, Role } from './drawing/drawing.ts'
export { CLOSE, CURVE, LINE, MOVE } from './drawing/drawing.ts'
export { POINTS_PER_MM, pointsOf } from './drawing/lengths.ts'
export { mergeDrawings, scale, scaleDrawing, translate } from './drawing/place.ts'
export { type SetText, setText, type TextSetting } from './drawing/set-text.ts'
export { barePart } from './engrave/bare-part.ts'
export { type CountLabel, countLabel } from './engrave/count-label.ts'
export { type EngravedExcerpt, type EngraveExcerptInput, engraveExcerpt } from './engrave/engrave-excerpt.ts'
export { type EngravedPart, type EngravedSystem, type EngravePartInput, engravePart } from './engrave/engrave-part.ts'
export { findingValue, lessonJson } from './exchange/json.ts'
export { partMidi } from './exchange/midi.ts'
export { partMusicXml } from './exchange/musicxml.ts'
export { stepsJson } from './exchange/steps-json.ts'
export { FACE_IDS, type FaceId, type FontBytes } from './fonts/face.ts'
export { type FaceHeights, type FontSet, openFonts, type PlacedGlyph, type TextMeasure } from './fonts/font-set.ts'
export type { FaceRun, Itemised } from './fonts/itemise.ts'
export { type DrawGridInput, type DrawnGrid, drawGrid, drawGridRow } from './grids/draw-grid.ts'
export { type Barre, barresOf, type GridWindow, gridWindow } from './grids/grid-window.ts'
export { answerAnchor, barAnchor, lessonId, partAnchor, shapeAnchor, slug } from './page/document/anchors.ts'
export type {
  Answer,
  DocumentBlock,
  DocumentItem,
  Fact,
  LessonDocument,
  LessonHead,
  PartHead,
} from './page/document/document-block.ts'
export type { PageWords } from './page/document/page-words.ts'
export type { NoteValue, TempoMark } from './page/document/tempo-mark.ts'
export { plainText } from './page/document/typography.ts'
export { pageWords } from './page/document/words-of-language.ts'
export { type Edition, PUPIL } from './page/edition.ts'
export type { PageImage } from './page/layout/layout-context.ts'
export type { Fragment, LaidPage, LinkTarget, PageItem, StructNode, StructRole } from './page/layout/page-content.ts'
export { type ComposeOptions, composeLesson } from './page/lesson-document.ts'
export { pageImage } from './page/page-image.ts'
export {
  cardPlainText,
  findCards,
  itemPlainText,
  type PartSteps,
  type PartTelling,
  partPlainText,
  type RichText,
  type StepCard,
  type StepClause,
  type StepItem,
  type StepLine,
  type StepOptions,
  stepsOfPart,
  type TextPiece,
  tellPart,
} from './steps/index.ts'
export { type CardFigure, type DrawCardFigureInput, drawCardFigure } from './strip/card-figure.ts'
export { type DrawnStrip, type DrawStripInput, drawStrip } from './strip/draw-strip.ts'
export {
  type DrawLegendInput,
  drawLegend,
  LEGEND_SIGNS,
  type LegendSign,
  type LegendWords,
  signsInUse,
} from './strip/legend.ts'
export { type CellState, type StripCell, type Swing, stripCells } from './strip/strip-cells.ts'
export { type StripStyle, stripStyle } from './strip/strip-style.ts'
export type { WebFont } from './surfaces/html/web-font.ts'
export {
  type Booklet,
  type BookletImage,
  type BookletLesson,
  type BookletPlan,
  planBooklet,
  type RenderHtmlInput,
  renderHtml,
} from './surfaces/html.ts'
export { type PageFinding, type PdfLesson, type RenderedPdf, type RenderPdfOptions, renderPdf } from './surfaces/pdf.ts'
export { drawingToSvg, type SvgOptions, sharedGlyphs, svgFaceStyles } from './surfaces/svg.ts'
export { lessonText } from './surfaces/text.ts'
