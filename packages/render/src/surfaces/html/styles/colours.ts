import type { Edition } from '../../../page/edition.ts'

/**
 * The colours of the page and the faces of its words. Contrast of words with the page: ink 17.9:1, quiet 7.0:1, accent 7.9:1 on white;
 * 15.6:1, 9.0:1 and 10.1:1 on the dark page (WCAG 2.2 asks for 4.5:1). The pure black edition has ink alone.
 */
export function colourStyles(edition: Pick<Edition, 'large' | 'mono'>): string {
  const { large, mono } = edition
  const [light, dark] = mono ? [pure(LIGHT), pure(DARK)] : large ? LARGE : [LIGHT, DARK]
  const next = `'Atkinson Hyperlegible Next','Academico',Verdana,sans-serif`
  const serif = large ? next : `'Source Serif 4','Academico',Georgia,serif`
  const sans = large ? next : `'Source Sans 3','Academico',system-ui,sans-serif`
  const faces = `--serif:${serif};--sans:${sans};--mono:'Source Code Pro',ui-monospace,monospace`
  return `
:root{${variables(light)};${faces};color-scheme:light dark}
@media screen and (prefers-color-scheme:dark){:root{${variables(dark)}}}
.accent{fill:var(--accent)}.quiet{fill:var(--quiet)}.paper{fill:var(--paper)}
path[stroke].accent{fill:none;stroke:var(--accent)}path[stroke].quiet{fill:none;stroke:var(--quiet)}path[stroke].paper{fill:none;stroke:var(--paper)}
`
}

/** Colours by meaning. */
export interface Colours {
  readonly ink: string
  readonly paper: string
  readonly quiet: string
  readonly accent: string
}

export const LIGHT: Colours = { ink: '#14181a', paper: '#ffffff', quiet: '#525c60', accent: '#0b5a66' }
export const DARK: Colours = { ink: '#eef1f0', paper: '#14191b', quiet: '#aab4b6', accent: '#7fd0da' }

/** In large print nothing is set lighter than this. */
export const LARGE: readonly [light: Colours, dark: Colours] = [
  { ...LIGHT, quiet: '#333b3e' },
  { ...DARK, quiet: '#d0d7d8' },
]

function pure({ paper }: Colours): Colours {
  const ink = paper === LIGHT.paper ? '#000000' : '#ffffff'
  return { ink, paper, quiet: ink, accent: ink }
}

function variables(colours: Colours): string {
  return Object.entries(colours)
    .map(([name, colour]) => `--${name}:${colour}`)
    .join(';')
}
