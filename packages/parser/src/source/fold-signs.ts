const PLAIN: Readonly<Record<string, string>> = {
  '\u2018': "'",
  '\u2019': "'",
  '\u201a': "'",
  '\u201b': "'",
  '\u2032': "'",
  '\u201c': '"',
  '\u201d': '"',
  '\u201e': '"',
  '\u201f': '"',
  '\u2010': '-',
  '\u2011': '-',
  '\u2012': '-',
  '\u2013': '-',
  '\u2014': '-',
  '\u2015': '-',
  '\u2212': '-',
  '\u266d': 'b',
  '\u266f': '#',
  '\u00d7': 'x',
  '\u00a0': ' ',
  '\u202f': ' ',
  '\u3000': ' ',
  '\u2236': ':',
  '\ufe55': ':',
}

/** The full-width forms of the plain signs lie this far above them, from U+FF01 to U+FF5E (Unicode, Halfwidth and Fullwidth Forms). */
const FULL_WIDTH = 0xfee0

const TYPOGRAPHIC = new RegExp(`[${Object.keys(PLAIN).join('')}\uff01-\uff5e]`, 'g')

/**
 * Reads what a word processor or a keyboard for wide writing makes of plain signs as the plain signs: curly quotes, long
 * dashes, ♭ ♯ ×, fixed spaces, full-width letters, figures and colons. One UTF-16 unit stays one unit, so columns do not
 * move. Not meant for words (`say` texts, titles).
 *
 * @example foldSigns('B♭ – ×') // 'Bb - x'
 */
export function foldSigns(text: string): string {
  return text.replace(TYPOGRAPHIC, (sign) => PLAIN[sign] ?? String.fromCharCode(sign.charCodeAt(0) - FULL_WIDTH))
}
