export { readFontBytes } from './files/font-files.ts'
export { readWebFonts } from './files/web-font-files.ts'
