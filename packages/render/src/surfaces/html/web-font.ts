/** One font file of the booklet, handed in by whoever has a disk. */
export interface WebFont {
  /** As the style sheet and the drawings name it. */
  readonly family: 'Source Serif 4' | 'Source Sans 3' | 'Source Code Pro' | 'Academico' | 'Atkinson Hyperlegible Next'
  readonly weight: number
  readonly style: 'normal' | 'italic'
  /** Which characters it is used for. */
  readonly subset: 'latin' | 'latin-ext' | 'music'
  readonly fileName: string
  /** WOFF2. */
  readonly bytes: Uint8Array
}

/** The characters of each subset. The first two are those of the Fontsource packages; the third holds accidentals among words. */
const RANGES: Readonly<Record<WebFont['subset'], string>> = {
  latin:
    'U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+0304,U+0308,U+0329,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD',
  'latin-ext':
    'U+0100-02BA,U+02BD-02C5,U+02C7-02CC,U+02CE-02D7,U+02DD-02FF,U+0304,U+0308,U+0329,U+1D00-1DBF,U+1E00-1E9F,U+1EF2-1EFF,U+2020,U+20A0-20AB,U+20AD-20C0,U+2113,U+2C60-2C7F,U+A720-A7FF',
  music: 'U+266D-266F',
}

/** The `@font-face` rules of the fonts, which lie in `folder`, relative to the style sheet. */
export function fontFaceRules(fonts: readonly WebFont[], folder: string): string {
  return fonts
    .map(
      ({ family, weight, style, subset, fileName }) =>
        `@font-face{font-family:"${family}";font-weight:${weight};font-style:${style};font-display:block;src:url("${folder}/${fileName}") format("woff2");unicode-range:${RANGES[subset]}}`,
    )
    .join('\n')
}
