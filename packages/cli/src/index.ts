export { readFontBytes } from './files/font-files.ts'
export { isBook, type LoadedLesson, type LoadedWork, loadWork } from './files/load-work.ts'
export { readWebFonts } from './files/web-font-files.ts'
export { runProgram } from './program.ts'
