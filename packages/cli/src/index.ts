export { readFontBytes } from './files/font-files.ts'
