export type { Drawing, DrawnGroup, DrawnItem, GlyphRun, Ink, Path, Role } from './drawing/drawing.ts'
export { CLOSE, CURVE, LINE, MOVE } from './drawing/drawing.ts'
export { FACE_IDS, type FaceId, type FontBytes } from './fonts/face.ts'
