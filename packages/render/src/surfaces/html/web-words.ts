/** The words that only the booklet speaks. */
export interface WebWords {
  readonly skip: string
  readonly lessonNav: string
  readonly bookNav: string
  readonly barMap: (part: string | null) => string
  readonly shapes: string
  readonly previous: string
  readonly next: string
  readonly lesson: (number: number) => string
  /** Staves for those who do not see them, and where they are told. Bars by number; 0 is the pickup. */
  readonly systems: (from: number, to: number) => string
  readonly cardFigure: (bar: string) => string
  readonly continued: (figure: string) => string
  /** The strum strip of a bar alone, with the rhythm it shows. */
  readonly strip: (bar: string, rhythm: string) => string
  readonly backToNote: string
}
